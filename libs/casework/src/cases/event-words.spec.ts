import { combineArches, shippedPaths } from '@archwright/protocol';
import { inEnglish } from '../tell.js';
import { eventTold } from './event-words.js';

const conventional = shippedPaths.find(({ code }) => code === 'conventional');
const chain = combineArches({ ...(conventional && { upper: conventional, lower: conventional }) });
const visit = chain.stages[2];
const step = chain.steps[0];

const eventSentence = (kind: string, body: object): string => inEnglish(eventTold(kind, body, chain));

describe('the history of a case in words', () => {
  it('tells a change of state with what it did', () => {
    const body = { from: 'open', to: 'paused', reason: 'Illness.', cancelled: ['one'], recheck: [] };
    expect(eventSentence('state-changed', body)).toBe(
      'The case was open and is now paused: Illness. 1 visit was cancelled.',
    );
    const resumed = {
      from: 'paused',
      to: 'open',
      reason: 'Well again',
      cancelled: [],
      recheck: ['age-of-bases', 'mucosa'],
    };
    expect(eventSentence('state-changed', resumed)).toBe(
      'The case was paused and is now open: Well again. To be looked at again before it goes on: age of bases, mucosa.',
    );
  });

  it('calls visits and laboratory steps by their titles', () => {
    const title = visit?.title ?? '';
    expect(eventSentence('stage-captured', { stage: visit?.code })).toBe(`Recorded: "${title}".`);
    expect(eventSentence('lab-step-finished', { code: step?.code })).toBe(
      `Laboratory work was finished: "${step?.title ?? ''}".`,
    );
  });

  it('says what an event of another kind says itself, else its name', () => {
    expect(eventSentence('replan-proposed', { sentence: 'A new plan moves 2 visits.' })).toBe(
      'A new plan moves 2 visits.',
    );
    expect(eventSentence('patient-asks-to-move', {})).toBe('Patient asks to move.');
  });

  it('tells also what its body names no part of', () => {
    expect(eventSentence('visit-missed', {})).toBe('The visit was missed: "".');
  });

  it('leaves out of a booking what there was none of', () => {
    expect(eventSentence('plan-confirmed', { booked: ['a', 'b'], provisional: [] })).toBe('2 visits were booked.');
    const applied = { booked: [], moved: ['a'], cancelled: [], reason: null };
    expect(eventSentence('plan-applied', applied)).toBe('The plan was changed. 1 visit moved.');
  });
});

import type { AppointmentState, StageState } from '@archwright/contracts';
import { inEnglish } from '../tell.js';
import { caseSentence, deliveryVisit, type CaseSituation } from './case-sentence.js';

const sentenceOf = (situation: CaseSituation): string => inEnglish(caseSentence(situation));

type StagePart = CaseSituation['stages'][number];

const visitOn = (startsAt: string, state: AppointmentState = 'booked'): StagePart['visit'] => ({
  stageId: 'stage',
  appointmentId: 'visit',
  state,
  startsAt: new Date(startsAt),
  endsAt: new Date(startsAt),
  clinicName: 'North clinic',
  zone: 'Europe/Berlin',
  clinicianName: 'Dr Example',
});

const aStage = (title: string, state: StageState, part: Partial<StagePart> = {}): StagePart => ({
  title,
  state,
  isDelivery: false,
  chained: true,
  visit: null,
  ...part,
});

const aCase = (part: Partial<CaseSituation> = {}): CaseSituation => ({
  state: 'open',
  stateReason: null,
  reviewOn: null,
  zone: 'Europe/Berlin',
  stages: [],
  alerts: [],
  heldUntil: null,
  ...part,
});

const examination = aStage('Examination', 'passed', { visit: visitOn('2027-01-05T08:00:00Z', 'completed') });
const trial = aStage('Trial', 'planned', { visit: visitOn('2027-03-28T00:30:00Z') });
const placement = aStage('Placement', 'planned', { isDelivery: true, visit: visitOn('2027-04-08T08:00:00Z') });
const recall = aStage('Recall', 'waiting', { chained: false });

describe('the sentence on top of a case', () => {
  it('says what comes next, in the time of the clinic, and when the dentures are placed', () => {
    expect(sentenceOf(aCase({ stages: [examination, trial, placement, recall] }))).toBe(
      'Next: Trial, Sunday 28 March 2027 at 01:30, North clinic. Placement on Thursday 8 April 2027.',
    );
    expect(sentenceOf(aCase({ stages: [examination, placement, recall] }))).toBe(
      'Next: Placement, Thursday 8 April 2027 at 10:00, North clinic.',
    );
  });

  it('says what is missing while nothing is booked', () => {
    const stages = [examination, aStage('Trial', 'waiting'), recall];
    expect(sentenceOf(aCase({ stages }))).toBe('Not booked: "Trial" and what follows. Ask for offers.');
    expect(sentenceOf(aCase({ state: 'enquiry', stages: [aStage('Examination', 'waiting')] }))).toBe(
      'Enquiry: nothing is booked yet. Ask for offers for "Examination".',
    );
    const missed = aStage('Trial', 'waiting', { visit: visitOn('2027-02-01T09:00:00Z', 'missed') });
    expect(sentenceOf(aCase({ stages: [examination, missed] }))).toBe(
      'Missed: Trial, Monday 1 February 2027 at 10:00. It needs a new time.',
    );
  });

  it('puts a decision before held times, held times before what is under way, and that before what comes next', () => {
    const underWay = aStage('Jaw relation', 'in-progress', { visit: visitOn('2027-02-01T09:00:00Z', 'in-progress') });
    const stages = [examination, underWay, placement];
    const heldUntil = new Date('2027-02-01T09:15:00Z');
    const alerts = [{ stage: 'Trial', reason: 'Vertical dimension does not agree' }];
    expect(sentenceOf(aCase({ stages, heldUntil, alerts }))).toBe(
      'To be decided at "Trial": Vertical dimension does not agree.',
    );
    expect(sentenceOf(aCase({ stages, heldUntil }))).toBe(
      'Times are held until Monday 1 February 2027 at 10:15: confirm them or give them back.',
    );
    expect(sentenceOf(aCase({ stages }))).toBe('Under way: Jaw relation.');
  });

  it.each([
    [
      { state: 'paused', stateReason: 'Illness', reviewOn: '2027-03-01' },
      'Paused: Illness. To be looked at again on Monday 1 March 2027.',
    ],
    [{ state: 'transferred', stateReason: 'Moved away.' }, 'Handed over: Moved away.'],
    [{ state: 'abandoned', stateReason: 'Wants no denture' }, 'Given up: Wants no denture.'],
    [{ state: 'closed' }, 'Closed. Recalls stay due.'],
    [{ state: 'ended-by-death' }, 'The patient has died. Everything was stopped.'],
  ] as const)('says why a case stands still: %j', (stopped, sentence) => {
    expect(sentenceOf(aCase({ ...stopped, stages: [trial] }))).toBe(sentence);
  });

  it('counts the placement that stands, not one that was repeated or missed', () => {
    const repeated = aStage('Placement', 'repeated', { isDelivery: true, visit: visitOn('2027-03-01T08:00:00Z') });
    const missed = { ...placement, visit: visitOn('2027-04-08T08:00:00Z', 'missed') };
    expect(deliveryVisit([repeated, placement])?.startsAt.toISOString()).toBe('2027-04-08T08:00:00.000Z');
    expect(deliveryVisit([repeated, missed])).toBeNull();
    const placed = aStage('Placement', 'passed', {
      isDelivery: true,
      visit: visitOn('2027-04-08T08:00:00Z', 'completed'),
    });
    expect(sentenceOf(aCase({ stages: [placed, recall] }))).toBe(
      'Placed on Thursday 8 April 2027. Later reviews and recalls are due, not booked.',
    );
  });
});

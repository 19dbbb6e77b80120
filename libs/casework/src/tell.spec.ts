import { tell, told } from './tell.js';

it('says nothing where there is nothing to say, and fills the rest by kind', () => {
  expect(tell(told('case-paused', { because: null, again: null })).sentence).toBe('Paused.');
  expect(tell(told('case-paused', { because: 'Ill.', again: { day: '2027-02-04' } })).sentence).toBe(
    'Paused: Ill. To be looked at again on Thursday 4 February 2027.',
  );
  const when = { moment: '2027-02-04T09:20:00.000Z', zone: 'Europe/Berlin' };
  const next = told('case-missed', { title: { title: 'Placement' }, when });
  expect(tell(next)).toEqual({
    sentence: 'Missed: Placement, Thursday 4 February 2027 at 10:20. It needs a new time.',
    told: next,
  });
});

it('puts one part behind the other', () => {
  const over = (name: string) => ({ code: 'load-over' as const, values: { name, on: { day: '2027-02-04' } } });
  const { sentence } = tell(told('load', { late: 2, over: { list: [over('Wax'), over('Curing')] }, more: 1 }));
  expect(sentence).toBe(
    '2 at risk of being late; over its open time: Wax on Thursday 4 February 2027, Curing on Thursday 4 February 2027, and 1 more.',
  );
});

it('keeps what people wrote as they wrote it', () => {
  expect(tell(told('case-transferred', { because: 'To {town}, <soon>.' })).sentence).toBe(
    'Handed over: To {town}, <soon>.',
  );
});

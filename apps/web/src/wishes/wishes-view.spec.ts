import { draftOfWishes, wishesOfDraft, wishSentence } from './wishes-view.js';

it('says wishes in one phrase', () => {
  const none = { weekdays: [], from: null, to: null, unavailableOn: [] };
  expect(wishSentence(none)).toBe('no wishes');
  expect(wishSentence({ ...none, weekdays: [2, 4], from: '09:00', to: '12:30' })).toBe(
    'on Tuesday and Thursday, from 09:00 to 12:30',
  );
  expect(wishSentence({ ...none, to: '12:00', unavailableOn: ['2027-01-05'] })).toBe('until 12:00, not on 1 day named');
});

it('says when somebody can bring the patient, and asks for nobody where no day is marked', () => {
  const escort = { weekdays: [2, 4], from: '09:00', to: '12:30' };
  const wishes = { weekdays: [], from: null, to: null, unavailableOn: [], escort };
  expect(wishSentence(wishes)).toBe('brought on Tuesday and Thursday, 09:00 to 12:30');
  expect(wishesOfDraft(draftOfWishes(wishes)).escort).toEqual(escort);
  expect(wishesOfDraft({ ...draftOfWishes(wishes), escortDays: [] }).escort).toBeNull();
});

it('comes back from the form as it went in, in order', () => {
  const wishes = { weekdays: [4, 2], from: null, to: '12:30', unavailableOn: ['2027-02-01', '2027-01-05'] };
  expect(wishesOfDraft(draftOfWishes(wishes))).toEqual({
    ...wishes,
    weekdays: [2, 4],
    unavailableOn: ['2027-01-05', '2027-02-01'],
    escort: null,
  });
});

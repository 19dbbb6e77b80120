import { clashesOf } from '../drafts/rebase.js';
import { draftOfScrew, readScrew, readScrewDraft, screwClashes } from './screw-draft.js';

const stated = { pitchMmPerTurn: 0.5, raisesBy: 'counter-clockwise' } as const;

it('starts from what is known of the set, and from nothing', () => {
  expect(readScrew(draftOfScrew(stated))).toEqual(stated);
  expect(draftOfScrew(null)).toEqual({ pitch: '', raisesBy: 'clockwise' });
});

it.each(['', '0,05', '3.1', 'half'])('states nothing by a rise of %j', (pitch) => {
  expect(readScrew({ pitch, raisesBy: 'clockwise' })).toBeNull();
});

it('shows both statements when two people state different screws of one set', () => {
  const typed = { base: draftOfScrew(null), mine: { pitch: '0.7', raisesBy: 'clockwise' as const } };
  expect(screwClashes(clashesOf(typed, draftOfScrew(stated)))).toEqual([
    { key: 'pitch', label: 'Rise of one turn, mm', mine: '0.7', theirs: '0.5' },
  ]);
});

it('takes back from the browser only what it can read', () => {
  expect(readScrewDraft({ pitch: '0.7', raisesBy: 'clockwise' })).toEqual({ pitch: '0.7', raisesBy: 'clockwise' });
  expect(readScrewDraft({ pitch: 0.7, raisesBy: 'clockwise' })).toBeNull();
});

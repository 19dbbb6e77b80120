import { draftOfToothList, readToothList } from './tooth-list-view.js';

const view = { version: 3, shades: ['light', 'warm'], moulds: [], arrangements: ['as the old ones'] };

it('shows one word on each line and reads it back, empty lines left out', () => {
  const draft = draftOfToothList(view);
  expect(draft).toEqual({ shades: 'light\nwarm', moulds: '', arrangements: 'as the old ones' });
  expect(readToothList({ ...draft, moulds: ' 4N \n\n 2D\n' })).toEqual({
    body: { shades: ['light', 'warm'], moulds: ['4N', '2D'], arrangements: ['as the old ones'] },
  });
});

it('says which list has a line that is too long', () => {
  const read = readToothList({ ...draftOfToothList(view), moulds: 'x'.repeat(61) });
  expect(read).toEqual({ errors: { moulds: 'Up to 100 lines of 60 characters each.' } });
});

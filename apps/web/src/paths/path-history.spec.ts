import { shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { begun, changedTo, undone } from './path-history.js';

const [found] = shippedPaths;
if (found === undefined) throw new Error('Paths are shipped.');
const titled = (title: string): TreatmentPath => ({ ...found, title });
const typed = (texts: readonly string[], field: string | null) =>
  texts.reduce((history, text) => changedTo(history, titled(text), field), begun(titled('')));

it('takes back what was typed into one field at once', () => {
  const history = typed(['a', 'ab', 'abc'], 'title');
  expect(history.path.title).toBe('abc');
  expect(undone(history).path.title).toBe('');
  expect(undone(undone(history)).path.title).toBe('');
});

it('takes other changes back one by one, and typing that began anew by itself', () => {
  expect(undone(typed(['a', 'ab'], null)).path.title).toBe('a');
  const again = changedTo(undone(changedTo(typed(['a'], 'title'), titled('b'), 'code')), titled('c'), 'title');
  expect(undone(again).path.title).toBe('a');
});

import { differences } from './differences.js';

const part = (key: string, text: string) => ({ key, label: key.toUpperCase(), text });

describe('two versions of a record', () => {
  it('differ where they say something else', () => {
    expect(differences([part('a', '1'), part('b', '2')], [part('a', '1'), part('b', '3')])).toEqual([
      { key: 'b', label: 'B', mine: '2', theirs: '3' },
    ]);
  });

  it('differ where one of them has a part more', () => {
    expect(differences([part('a', '1')], [part('b', '2')])).toEqual([
      { key: 'b', label: 'B', mine: '', theirs: '2' },
      { key: 'a', label: 'A', mine: '1', theirs: '' },
    ]);
  });

  it('are one where they say the same', () => {
    expect(differences([part('a', '1')], [part('a', '1')])).toEqual([]);
  });
});

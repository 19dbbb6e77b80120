import { readColumns, TableFileError } from './read-columns.js';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('a table of numbers', () => {
  it('is read whatever parts its cells, decimal commas included', () => {
    expect(readColumns(bytes('a,b\n1,2.5\n-3,1e2\n')).column('b')).toEqual([2.5, 100]);
    expect(readColumns(bytes('a;b\r\n1,5;2\r\n')).column('a')).toEqual([1.5]);
    expect(readColumns(bytes('\uFEFFa\tb\n1\t2\n')).names).toEqual(['a', 'b']);
    expect(readColumns(bytes('"width; mm",b\n1,2\n')).names).toEqual(['width; mm', 'b']);
  });

  it('keeps decimal commas under a single name, and refuses them where commas part the cells', () => {
    expect(readColumns(bytes('a\n65,5\n66\n')).column('a')).toEqual([65.5, 66]);
    expect(() => readColumns(bytes('a,b\n65,5,66,0\n'))).toThrow(/Line 2 holds 4 cells, the header names 2/);
    expect(readColumns(bytes('a,b\n1,2,\n')).column('b')).toEqual([2]);
  });

  it.each([
    ['', 'empty', /holds no rows/],
    ['a,b\n', 'empty', /holds no rows/],
    ['1,2\n3,4\n', 'header', /Line 1 holds numbers/],
    ['a,a\n3,4\n', 'header', /Two columns are named "a"/],
  ])('refuses %j', (text, reason, words) => {
    expect(() => readColumns(bytes(text))).toThrow(words);
    expect(() => readColumns(bytes(text))).toThrow(TableFileError);
    try {
      readColumns(bytes(text));
    } catch (error) {
      expect((error as TableFileError).code).toBe(`interop.table-${reason}`);
    }
  });

  it('names the line and the cell that is no number', () => {
    const table = readColumns(bytes('a,b\n1,2\n\nx,\n'));
    expect(() => table.column('a')).toThrow('Line 4: column "a" holds "x". Accepted: a number such as 61.5.');
    expect(() => table.column('b')).toThrow('Line 4: column "b" is empty.');
    expect(() => table.column('c')).toThrow('There is no column "c". Columns: a, b.');
  });
});

import { UsageError } from '../arguments.js';
import { readMapping } from './column-mapping.js';

describe('a mapping of columns', () => {
  it.each([
    [['Surname=family_name'], { Surname: 'family_name' }],
    [['Surname at birth = family name , Born=birth_date'], { 'Surname at birth': 'family name', Born: 'birth_date' }],
    [['a=b=mail', 'Name\\, first=given_name'], { 'a=b': 'mail', 'Name, first': 'given_name' }],
    [[], {}],
  ])('reads %j', (texts, mapping) => {
    expect(readMapping(texts, 'usage')).toEqual(mapping);
  });

  it.each(['Surname', '=mail', 'Surname=', 'Surname=family_name,', ''])('refuses %j', (text) => {
    expect(() => readMapping([text], 'usage')).toThrow(UsageError);
  });
});

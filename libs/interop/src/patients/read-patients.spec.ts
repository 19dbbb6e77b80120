import fc from 'fast-check';
import Papa from 'papaparse';
import { readPatients, type PatientFileOptions } from './read-patients.js';
import { rejectsCsv } from './rejects-csv.js';

const read = (text: string | Uint8Array, options: Partial<PatientFileOptions> = {}) =>
  readPatients(typeof text === 'string' ? Buffer.from(text) : text, {
    zone: 'Europe/London',
    today: '2027-01-28',
    ...options,
  });
const HEAD = 'given name,family name,birth date';
const OLD_BYTES = Buffer.from(`${HEAD}\nZo\u00eb,M\u00fcller,1951-03-28\n`, 'latin1');

describe('reading patients', () => {
  it('fills the contract from named columns and the rest from its defaults', () => {
    const { rows, rejected, ignoredColumns } = read(
      `Patient number,${HEAD},E-mail,Phone,Wheelchair,Reminders,Shoe size\n` +
        'P-7,Ada,Byron,1951-03-28,ada@example.org,+44 20 7946 0000,yes,"mail, phone",38\n',
    );
    expect(rejected).toEqual([]);
    expect(ignoredColumns).toEqual(['Shoe size']);
    expect(rows).toEqual([
      {
        line: 2,
        cells: expect.arrayContaining(['P-7']) as string[],
        key: 'id:P-7',
        hasReference: true,
        given: ['givenName', 'familyName', 'birthOn', 'mail', 'phone', 'wheelchairRoom', 'reminderConsent'],
        patient: expect.objectContaining({
          givenName: 'Ada',
          familyName: 'Byron',
          birthOn: '1951-03-28',
          mail: 'ada@example.org',
          wheelchairRoom: true,
          reminderConsent: ['mail', 'phone'],
          zone: 'Europe/London',
          locale: 'en',
          companionName: null,
          travelMinutes: 0,
        }) as object,
      },
    ]);
  });

  it.each([
    ['semicolons', HEAD.replaceAll(',', ';') + '\nAda;Byron;1951-03-28\n'],
    ['tabs', HEAD.replaceAll(',', '\t') + '\nAda\tByron\t1951-03-28\n'],
    ['a byte order mark', `\uFEFF${HEAD}\nAda,Byron,1951-03-28\n`],
    ['quotes and CRLF', `"given name","family name","birth date"\r\n"Ada","Byron","1951-03-28"\r\n`],
  ])('reads a file with %s', (_, text) => {
    expect(read(text).rows[0]?.patient).toMatchObject({ givenName: 'Ada', familyName: 'Byron', birthOn: '1951-03-28' });
  });

  it.each([
    ['Windows-1252 where it is stated', OLD_BYTES, 'windows-1252'],
    ['UTF-8', Buffer.from(`${HEAD}\nZoë,Müller,1951-03-28\n`), undefined],
    ['UTF-16', Buffer.from(`\uFEFF${HEAD}\nZoë,Müller,1951-03-28\n`, 'utf16le'), undefined],
  ] as const)('reads letters beyond ASCII in %s', (_, bytes, encoding) => {
    expect(read(bytes, { encoding }).rows[0]?.patient).toMatchObject({ givenName: 'Zoë', familyName: 'Müller' });
  });

  it('never guesses an older encoding', () => {
    expect(() => read(OLD_BYTES)).toThrow(expect.objectContaining({ code: 'interop.patients-encoding' }) as Error);
  });

  it('follows a mapping over the known names', () => {
    const { rows } = read('first,last name,Surname at birth,born\nAda,Byron,King,1951-03-28\n', {
      mapping: { first: 'given_name', 'Surname at birth': 'Family name' },
    });
    expect(rows[0]?.patient).toMatchObject({ givenName: 'Ada', familyName: 'King' });
  });

  it('reads a date only in the stated order', () => {
    const on = (date: string, dateOrder?: 'dmy' | 'mdy') => {
      const { rows, rejected } = read(`${HEAD}\nAda,Byron,${date}\n`, { dateOrder });
      return rows[0]?.patient.birthOn ?? rejected[0]?.reasons[0]?.column;
    };
    expect(on('03.04.1951', 'dmy')).toBe('1951-04-03');
    expect(on('3/4/1951', 'mdy')).toBe('1951-03-04');
    expect(on('1951-04-03', 'dmy')).toBe('1951-04-03');
    expect([on('3/4/1951'), on('03.04.51', 'dmy'), on('31.02.1951', 'dmy')]).toEqual(Array(3).fill('birth date'));
  });

  it.each([
    ['w', 'female'],
    ['Male', 'male'],
    ['', null],
  ])('reads sex "%s" as %p, and guesses none', (cell, sex) => {
    const file = (typed: string) => read(`${HEAD},sex\nIna,Example,1951-03-28,${typed}\n`);
    expect(file(cell).rows[0]?.patient.sex).toBe(sex);
    expect(file('x').rejected[0]?.reasons[0]?.accepted).toBe('female or male; empty where it is not stated');
  });

  it('takes nobody who is not born yet or born before anybody now alive', () => {
    const lines = (date: string) =>
      read(`${HEAD}\nAda,Byron,${date}\n`).rejected.map(({ reasons }) => reasons[0]?.column);
    expect(['2027-01-28', '1902-01-28'].map(lines)).toEqual([[], []]);
    expect(['2027-01-29', '1902-01-27'].map(lines)).toEqual([['birth date'], ['birth date']]);
  });

  it.each([
    ['both', ['mail', 'phone']],
    ['mail; phone', ['mail', 'phone']],
    ['none', []],
  ])('reads consent "%s" as %j', (cell, consent) => {
    const { rows } = read(`${HEAD},reminder consent,language\nAda,Byron,1951-03-28,${cell},de_AT\n`);
    expect(rows[0]?.patient).toMatchObject({ reminderConsent: consent, locale: 'de-AT' });
  });

  it('leaves out bad rows cell by cell, with the line on which each begins', () => {
    const { rows, rejected } = read(
      `${HEAD},mail,zone,language\n"Ada\nMaria",Byron,1951-03-28,,,\n,Byron,soon,not-a-mail,Mars/Base,x y\nIda,Short,1950-01-01\n\nEve,Day,1949-05-05,,,\n`,
    );
    expect(rows.map(({ line }) => line)).toEqual([2, 7]);
    expect(
      rejected.map(({ line, cells, reasons }) => [line, cells, reasons.map(({ column }) => column).sort()]),
    ).toEqual([
      [
        4,
        ['', 'Byron', 'soon', 'not-a-mail', 'Mars/Base', 'x y'],
        ['birth date', 'given name', 'language', 'mail', 'zone'],
      ],
      [5, ['Ida', 'Short', '1950-01-01'], ['']],
    ]);
    const reasons = rejected.flatMap((row) => row.reasons);
    expect(reasons.every(({ problem, accepted }) => problem !== '' && accepted !== '')).toBe(true);
  });

  it('gives a person the same key in every file and reports the second one inside a file', () => {
    const first = read(`${HEAD}\nAda,Byron,1951-03-28\n`).rows[0]?.key;
    const again = read(`birth date;family name;given name;mail\n1951-03-28;BYRON ;ada;ada@example.org\n`).rows[0]?.key;
    expect(again).toBe(first);
    const { rows, rejected } = read(`${HEAD}\nAda,Byron,1951-03-28\nada,byron,1951-03-28\n`);
    expect(rows).toHaveLength(1);
    expect(rejected).toMatchObject([{ line: 3, reasons: [{ problem: 'is the same person as line 2' }] }]);
  });

  it.each([
    ['an empty file', '', {}, 'empty'],
    ['a missing column', 'given name,family name\nAda,Byron\n', {}, 'header'],
    ['two columns for one field', `${HEAD},surname\nAda,Byron,1951-03-28,King\n`, {}, 'header'],
    ['a mapping to no field', `${HEAD}\n`, { 'given name': 'shoeSize' }, 'mapping'],
    ['a mapping of no column', `${HEAD}\n`, { Surname: 'familyName' }, 'mapping'],
    ['a quotation mark never closed', `${HEAD}\n"Ada,Byron,1951-03-28\nEve,Day,1949-05-05\n`, {}, 'quotes'],
    ['a picture', '\u0089PNG\u0000\u0000', {}, 'encoding'],
  ])('refuses %s as a whole', (_, text, mapping, reason) => {
    expect(() => read(text, { mapping })).toThrow(
      expect.objectContaining({ code: `interop.patients-${reason}` }) as Error,
    );
  });
});

describe('the file of rejected rows', () => {
  const reasons = [{ column: 'mail', problem: 'is not accepted', accepted: 'x' }];

  it('never lets a cell begin as a formula', () => {
    fc.assert(
      fc.property(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\u0000'), fc.string(), (start, rest) => {
        const csv = rejectsCsv(['mail'], [{ line: 2, cells: [start + rest], reasons }]);
        const [, cells] = Papa.parse<string[]>(csv.trimEnd(), { delimiter: ',', newline: '\r\n' }).data;
        expect(cells?.[0]?.startsWith(`'${start}`)).toBe(true);
      }),
      { seed: 20260105 },
    );
  });

  it('keeps line and reasons under their names for a row that is too short or too long, and all of its cells', () => {
    const { header, rejected } = read(`${HEAD}\nAda,Byron\nEve,Day,1949-05-05,surplus\n`);
    const [, short, long] = Papa.parse<string[]>(rejectsCsv(header, rejected)).data;
    expect(short?.slice(0, 4)).toEqual(['Ada', 'Byron', '', '2']);
    expect(long?.slice(0, 4)).toEqual(['Eve', 'Day', '1949-05-05', '3']);
    expect(long?.[5]).toBe('surplus');
  });

  it('can be corrected and imported like the file itself', () => {
    const first = read(`${HEAD},phone\nAda,Byron,28.3.1951,+44 20 7946 0000\n`);
    const csv = rejectsCsv(first.header, first.rejected);
    expect(csv.split('\r\n')[0]).toBe(`${HEAD},phone,rejected line,rejected because`);
    expect(csv).toContain("'+44");
    const again = read(csv);
    const cells = (text: string) => Papa.parse(text).data;
    expect(cells(rejectsCsv(again.header, again.rejected))).toEqual(cells(csv));
    const corrected = read(csv.replace('28.3.1951', '1951-03-28'));
    expect(corrected.rejected).toEqual([]);
    expect(corrected.rows[0]?.patient.phone).toBe('+44 20 7946 0000');
    expect(corrected.ignoredColumns).toEqual(['rejected line', 'rejected because']);
  });
});

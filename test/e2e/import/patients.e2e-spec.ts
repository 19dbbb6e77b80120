import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { AuditEntry, Consent, Patient, PatientIdentity } from '@archwright/records';
import { everyRow } from '../../support/every-row.js';
import { openCommandLine, type CommandLine } from './command-line.js';

const NASTY = join(process.cwd(), 'test/e2e/import/nasty.csv');
const HEAD = 'reference,given name,family name,birth date';

let line: CommandLine;
beforeAll(async () => {
  line = await openCommandLine();
}, 60_000);
afterAll(() => line.close());

/** Runs the import on a file of these rows, which stands where the caller does. */
function importRows(rows: readonly string[], ...options: readonly string[]) {
  writeFileSync(join(line.folder, 'patients.csv'), `${rows.join('\n')}\n`);
  return line.run('import', 'patients', 'patients.csv', ...options);
}
const all = () => everyRow(line.database);
const identities = () => line.rows((tx) => tx.find(PatientIdentity, { order: { searchKey: 'ASC' } }));
const identityOf = async (familyName: string) => {
  const found = (await identities()).find((each) => each.familyName === familyName);
  if (found === undefined) throw new Error(`There is no patient ${familyName}.`);
  return found;
};
const patientOf = async (familyName: string) => {
  const { patientId } = await identityOf(familyName);
  return line.rows((tx) => tx.findOneByOrFail(Patient, { id: patientId }));
};

describe('importing patients', () => {
  const importNasty = () => line.run('import', 'patients', NASTY, '--date-order', 'dmy', '--rejects', 'rejects.csv');

  it('takes the good rows and says of each other one why not, and where it stands', async () => {
    const before = (await identities()).length;
    const { code, answer, said } = await importNasty();
    expect(code).toBe(1);
    expect(answer.split('\n')).toEqual([
      'nasty.csv, 11 rows: done',
      'added 4, updated 0, already there 0, rejected 7',
      'columns that nothing was made of: Schuhgröße',
      expect.stringMatching(/^line 4: Geburtsdatum is not accepted; accepted: a past date/),
      'line 5: the row is the same person as line 2; accepted: each person once',
      'line 7: the row is the same person as line 6; accepted: each person once',
      expect.stringMatching(/^line 8: Sprache cannot be read.*E-Mail.*Telefon.*Erinnerungen.*Zeitzone/),
      'line 9: the row has 4 cells where the header has 10; accepted: 10 cells',
      expect.stringMatching(/^line 13: the row holds a stray quotation mark/),
      expect.stringMatching(/^line 14: Geburtsdatum is after 2027-01-04/),
      '',
    ]);
    expect(said).toContain('Comparing');
    expect(answer).not.toContain('Comparing');
    expect(said).not.toContain('not-a-mail'); // a cell may be a patient's, and terminals keep what they showed
    expect(await identities()).toHaveLength(before + 4);
    expect(await identityOf('Müller-Example')).toMatchObject({
      givenName: 'Zoë "Zo"',
      birthOn: '1944-02-01',
      importKey: 'id:P-2',
      phone: null,
    });
    expect(await patientOf('Müller-Example')).toMatchObject({ locale: 'de', zone: 'Europe/Berlin', version: 1 });
    const { patientId } = await identityOf('Byron-Example');
    const consents = await line.rows((tx) => tx.findBy(Consent, { patientId }));
    expect(consents.map(({ channel, wordingVersion }) => `${channel} ${wordingVersion}`).sort()).toEqual([
      'mail imported',
      'phone imported',
    ]);
    const audits = await line.rows((tx) => tx.findBy(AuditEntry, { action: 'patient-imported' }));
    expect(audits).toHaveLength(4);
  });

  it('keeps rejected rows as they stood, with line and reasons, safe to open in a spreadsheet', () => {
    const rejects = readFileSync(join(line.folder, 'rejects.csv'), 'utf8');
    expect(rejects.split('\r\n')[0]).toMatch(/^Patientennummer,.*,Schuhgröße,rejected line,rejected because$/);
    expect(rejects).toMatch(
      /\r\nP-4,"?'=1\+1"?,Formula-Example,03\.04\.1950,12,not-a-mail,.*,8,"?Sprache cannot be read/,
    );
  });

  it('writes no row the second time', async () => {
    const before = await all();
    const { answer } = await importNasty();
    expect(answer).toContain('added 0, updated 0, already there 4, rejected 7');
    expect(await all()).toEqual(before);
  });

  it('changes somebody who is there only when asked, and then only what the file speaks of', async () => {
    const rows = ['Patientennummer,first,last,born,phone', 'P-1,Ada,Byron-Example,1951-03-28,+44 20 7946 0999'];
    const map = ['--map', 'first=given_name,last=family_name', '--map', 'born=birth_date'];
    const before = await all();
    const refused = await importRows(rows, ...map);
    expect(refused.code).toBe(1);
    expect(refused.answer).toContain('line 2: the row differs from the patient who is already there: phone');
    expect(await all()).toEqual(before);

    expect(await importRows(rows, ...map, '--update')).toMatchObject({ code: 0 });
    expect(await identityOf('Byron-Example')).toMatchObject({ phone: '+44 20 7946 0999', mail: 'ada@example.test' });
    expect((await patientOf('Byron-Example')).version).toBe(2);
    const after = await all();
    expect((await importRows(rows, ...map, '--update')).answer).toContain('updated 0, already there 1');
    expect(await all()).toEqual(after);
  });

  it('takes the reference over for somebody who was typed in, and knows the person by it from then on', async () => {
    const rows = [HEAD, 'D-1,Alma,Example,1949-03-04'];
    expect((await importRows(rows)).answer).toContain('differs from the patient who is already there: reference');
    expect((await importRows(rows, '--update')).code).toBe(0);
    const { patientId } = await identityOf('Example');
    expect((await importRows([HEAD, 'D-1,Alma,Married-Example,1949-03-04'], '--update')).code).toBe(0);
    expect((await identityOf('Married-Example')).patientId).toBe(patientId);
  });

  it('takes two references for two persons, and asks for one where a name stands for both', async () => {
    const twins = [HEAD, 'T-1,Jo,Twin-Example,1950-01-01', 'T-2,Jo,Twin-Example,1950-01-01'];
    expect((await importRows(twins)).answer).toContain('added 2');
    const { code, answer } = await importRows([HEAD, ',Jo,Twin-Example,1950-01-01']);
    expect(code).toBe(1);
    expect(answer).toContain('has the name and birth date of several patients; accepted: a reference');
  });

  it('never gives a consent again that the patient has withdrawn', async () => {
    const rows = [`${HEAD},reminder consent`, 'C-1,Noa,Quiet-Example,1950-01-01,mail'];
    expect((await importRows(rows)).code).toBe(0);
    const { patientId } = await identityOf('Quiet-Example');
    await line.rows((tx) => tx.update(Consent, { patientId }, { withdrawnAt: new Date('2027-02-01T09:00:00Z') }));
    const before = await all();
    const { code, answer } = await importRows(rows, '--update');
    expect(code).toBe(1);
    expect(answer).toContain('consents to reminders that the patient has withdrawn');
    expect(await all()).toEqual(before);
  });

  it('writes nothing with --strict when one row is bad, and nothing with --dry-run', async () => {
    const good = 'S-1,Ben,Strict-Example,1950-01-01';
    const before = await all();
    const strict = await importRows([HEAD, good, 'S-2,,Strict-Example,1950-01-01'], '--strict');
    expect(strict.code).toBe(1);
    expect(strict.answer).toContain('refused as a whole');
    expect(strict.answer).toContain('line 3: given name is empty');
    const tried = await importRows([HEAD, good], '--dry-run');
    expect(tried).toMatchObject({ code: 0 });
    expect(tried.answer).toContain('tried only, nothing was written\nadded 1');
    expect(await all()).toEqual(before);
    expect((await importRows([HEAD, good], '--strict')).answer).toContain('added 1');
  });

  it('reads an older encoding only when it is named', async () => {
    const path = join(line.folder, 'old.csv');
    writeFileSync(path, Buffer.from(`${HEAD}\nW-1,J\u00f6rg,Old-Example,1950-01-01\n`, 'latin1'));
    const refused = await line.run('import', 'patients', 'old.csv');
    expect(refused.code).toBe(1);
    expect(refused.said).toContain('not UTF-8');
    expect((await line.run('import', 'patients', 'old.csv', '--encoding', 'windows-1252')).code).toBe(0);
    expect((await identityOf('Old-Example')).givenName).toBe('Jörg');
  });

  it.each([
    ['no file', ['patients'], 2, 'Give one file'],
    ['a file that is not there', ['patients', 'nowhere.csv'], 2, 'nowhere.csv'],
    ['an unknown option', ['patients', 'patients.csv', '--stirct'], 2, '--stirct'],
    ['a mapping to nothing', ['patients', 'patients.csv', '--map', 'born'], 2, 'maps nothing'],
    ['an unknown date order', ['patients', 'patients.csv', '--date-order', 'ydm'], 2, 'ymd or dmy or mdy'],
    ['rejects over the input', ['patients', 'patients.csv', '--rejects', './patients.csv'], 2, 'give another one'],
    ['something else', ['invoices', 'x.csv'], 2, "can't be imported"],
    ['another practice', ['patients', 'patients.csv', '--organisation', 'Nobody'], 1, '"Quillon Example Practice"'],
    ['a zone of nowhere', ['patients', 'patients.csv', '--zone', 'Mars/Base'], 1, 'Mars/Base'],
    ['a picture', ['patients', 'picture.png'], 1, 'not text'],
  ])('refuses %s and says what is accepted', async (_, args, code, words) => {
    writeFileSync(join(line.folder, 'picture.png'), '\u0089PNG\u0000\u0000');
    const before = await all();
    const outcome = await line.run('import', ...args);
    expect(outcome).toMatchObject({ code, answer: '' });
    expect(outcome.said).toContain(words);
    expect(await all()).toEqual(before);
  });

  it('explains its columns', async () => {
    const { code, answer } = await line.run('import', 'patients', '--help');
    expect(code).toBe(0);
    expect(answer).toMatch(/family name +1 to 100 characters \(needed\)/);
    expect(answer).toContain('reminder consent');
  });
});

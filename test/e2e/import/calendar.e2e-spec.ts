import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { claim } from '@archwright/records';
import { everyRow } from '../../support/every-row.js';
import { openCommandLine, type CommandLine } from './command-line.js';

const NASTY = join(process.cwd(), 'test/e2e/import/nasty.ics');
const AUTUMN = ['--from', '1997-09-01', '--until', '1998-01-01'];
const CHAIR = ['--resource', 'chair 2', '--clinic', 'North clinic'];

let line: CommandLine;
beforeAll(async () => {
  line = await openCommandLine();
}, 60_000);
afterAll(() => line.close());

const all = () => everyRow(line.database);
/** Blocked time of a chair in UTC, with the rows that hold it. */
const blocked = (label: string): Promise<{ id: string; time: string }[]> =>
  line.rows((tx) =>
    tx.query(
      `SELECT o.id, to_char(o.starts_at AT TIME ZONE 'UTC', 'MM-DD HH24:MI') || ' to '
         || to_char(o.ends_at AT TIME ZONE 'UTC', 'MM-DD HH24:MI') AS time
       FROM occupancy o JOIN chair c ON c.id = o.resource_id JOIN clinic l ON l.id = c.clinic_id
       WHERE c.label = $1 AND l.name = 'North clinic' AND o.closure_id IS NOT NULL ORDER BY o.starts_at`,
      [label],
    ),
  );
const timesOf = async (label: string) => (await blocked(label)).map(({ time }) => time);

// The time zone "Fictitious" and the recurrences are those of RFC 5545, sections 3.6.5 and 3.8.5.3; placed by hand:
// its summer time is UTC-4 until 26 October 1997, its standard time UTC-5. The clinic's zone is UTC in that winter.
const EXPECTED = [
  '09-02 13:00 to 09-02 13:30',
  '09-02 20:00 to 09-02 21:00',
  '09-04 13:00 to 09-04 13:30',
  '09-04 20:00 to 09-04 21:00',
  '09-05 18:00 to 09-05 19:00',
  '09-07 13:00 to 09-07 13:30',
  '09-08 13:00 to 09-08 13:30',
  '09-09 13:00 to 09-09 13:30',
  '09-10 13:00 to 09-10 13:30',
  '09-11 13:00 to 09-11 13:30',
  '09-16 20:00 to 09-16 21:00',
  '09-18 20:00 to 09-18 21:00',
  '09-30 20:00 to 09-30 21:00',
  '10-02 20:00 to 10-02 21:00',
  '10-14 20:00 to 10-14 21:00',
  '10-16 20:00 to 10-16 21:00',
  '10-20 13:00 to 10-20 13:30',
  '10-27 14:00 to 10-27 14:30',
  '11-10 09:00 to 11-10 10:00',
  '12-25 00:00 to 12-26 00:00',
];

describe('importing a calendar', () => {
  it('blocks what the feed says, and leaves out with its line what it can not read', async () => {
    const { code, answer } = await line.run('import', 'calendar', NASTY, ...CHAIR, ...AUTUMN);
    expect(code).toBe(1);
    expect(answer.split('\n')).toEqual([
      'Chair 2 of the clinic North clinic',
      'busy times 20: new 20, as before 0; gone 0',
      expect.stringMatching(/^line 60: VEVENT left out: accepts a date/),
      'line 76: VEVENT left out: begins here but END:VEVENT is missing',
      '',
    ]);
    expect(await timesOf('Chair 2')).toEqual(EXPECTED);
    expect(JSON.stringify(await all())).not.toContain('private matter');
  });

  it('writes no row the second time', async () => {
    const before = await all();
    const { answer } = await line.run('import', 'calendar', NASTY, ...CHAIR, ...AUTUMN);
    expect(answer).toContain('busy times 20: new 0, as before 20; gone 0');
    expect(await all()).toEqual(before);
  });

  it('moves what has moved, frees what is gone and leaves the other rows as they are', async () => {
    const before = await blocked('Chair 2');
    const changed = readFileSync(NASTY, 'utf8')
      .replaceAll('19971110T', '19971117T')
      .replace('DTSTART;VALUE=DATE:19971225', 'DTSTART;VALUE=DATE:19971225\r\nSTATUS:CANCELLED');
    writeFileSync(join(line.folder, 'nasty.ics'), changed);
    const { answer } = await line.run('import', 'calendar', 'nasty.ics', ...CHAIR, ...AUTUMN);
    expect(answer).toContain('busy times 19: new 1, as before 18; gone 2');
    const after = await blocked('Chair 2');
    expect(after.slice(0, 18)).toEqual(before.slice(0, 18));
    expect(after.slice(18).map(({ time }) => time)).toEqual(['11-17 09:00 to 11-17 10:00']);
  });

  it('never takes booked time, and tells it by the clock of the clinic', async () => {
    const [chair]: { id: string }[] = await line.rows((tx) =>
      tx.query(
        `SELECT c.id FROM chair c JOIN clinic l ON l.id = c.clinic_id WHERE c.label = 'Chair 1' AND l.name = 'North clinic'`,
      ),
    );
    // British summer time: the busy time 13:00 to 13:30 UTC of 4 September stands at 14:00 there.
    const visit = { startsAt: new Date('1997-09-04T13:10:00Z'), endsAt: new Date('1997-09-04T13:20:00Z') };
    await line.rows((tx) => claim(tx, [{ ...visit, resourceId: chair?.id ?? '', purpose: 'visit' }], visit.startsAt));
    const { answer } = await line.run('import', 'calendar', NASTY, '--resource', chair?.id ?? '', ...AUTUMN);
    expect(answer).toContain('1 busy times fall on booked time');
    expect(answer).toContain('  1997-09-04 14:10 to 1997-09-04 14:20 (Europe/London)');
    expect((await timesOf('Chair 1')).slice(2, 4)).toEqual([
      '09-04 13:00 to 09-04 13:10',
      '09-04 13:20 to 09-04 13:30',
    ]);
  });

  it('writes nothing with --dry-run', async () => {
    const before = await all();
    const tried = await line.run('import', 'calendar', NASTY, '--resource', 'surgical-set', ...AUTUMN, '--dry-run');
    expect(tried.answer).toContain('tried only, nothing was written\nbusy times 20: new 20');
    expect(await all()).toEqual(before);
  });

  it.each([
    ['a name that stands for several', [NASTY, '--resource', 'Chair 1'], 1, '"Chair 1" of the clinic "East clinic"'],
    ['a name that stands for none', [NASTY, '--resource', 'Chair 9'], 1, 'Accepted: "Chair 1"'],
    ['no resource', [NASTY], 2, '--resource'],
    ['a date that is none', [NASTY, ...CHAIR, '--from', '4.1.2027'], 2, '2027-01-28'],
    ['an end before the start', [NASTY, ...CHAIR, '--from', '1997-09-01', '--until', '1997-01-01'], 1, 'an end after'],
    ['a file that is not there', ['nowhere.ics', ...CHAIR], 2, 'nowhere.ics'],
    ['what is no calendar', [join(process.cwd(), 'package.json'), ...CHAIR], 1, 'VCALENDAR'],
  ])('refuses %s and says what is accepted', async (_, args, code, words) => {
    const before = await all();
    const outcome = await line.run('import', 'calendar', ...args);
    expect(outcome).toMatchObject({ code, answer: '' });
    expect(outcome.said).toContain(words);
    expect(await all()).toEqual(before);
  });

  describe('from an address', () => {
    const SECRET = 'a-key-that-nobody-may-read';
    let server: Server;
    let url: string;
    beforeAll(async () => {
      const calendar = readFileSync(NASTY);
      server = createServer(({ url: path }, response) => {
        if (path === '/moved') response.writeHead(301, { location: `/${SECRET}` }).end();
        else response.writeHead(path === `/${SECRET}` ? 200 : 404).end(calendar);
      });
      await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
      url = `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`;
    });
    afterAll(() => server.close());
    const importFrom = (address: string, ...options: readonly string[]) =>
      line.run('import', 'calendar', address, '--resource', 'Surgical set A', ...AUTUMN, ...options);

    it('asks nobody inside a private network unless told to', async () => {
      const before = await all();
      const outcome = await importFrom(`${url}/${SECRET}`);
      expect(outcome).toMatchObject({ code: 1, answer: '' });
      expect(outcome.said).toContain('--allow-private');
      expect(await all()).toEqual(before);
    });

    it('reads it, and neither says nor keeps the address', async () => {
      const { answer, said } = await importFrom(`${url}/${SECRET}`, '--allow-private');
      expect(answer).toContain('busy times 20: new 20');
      expect(said).not.toContain(SECRET);
      const before = await all();
      expect(JSON.stringify(before)).not.toContain(SECRET);
      expect((await importFrom(`${url}/${SECRET}`, '--allow-private')).answer).toContain('new 0, as before 20');
      expect(await all()).toEqual(before);
    });

    it('follows a redirect under the name that the caller gave', async () => {
      const named = await importFrom(`${url}/moved`, '--allow-private', '--source', 'rota');
      expect(named.answer).toContain('busy times 20: new 20');
    });

    it('leaves everything as it was when the server refuses', async () => {
      const before = await all();
      const outcome = await importFrom(`${url}/elsewhere`, '--allow-private');
      expect(outcome).toMatchObject({ code: 1, answer: '' });
      expect(outcome.said).toContain('answers 404');
      expect(await all()).toEqual(before);
    });
  });
});

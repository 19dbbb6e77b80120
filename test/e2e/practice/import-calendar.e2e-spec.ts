import {
  importedCalendar,
  practiceView,
  problem,
  type ImportedCalendar,
  type PracticeView,
} from '@archwright/contracts';
import { claim, inOrganisation, listOrganisations } from '@archwright/records';
import { everyRow } from '../../support/every-row.js';
import { openDemoApi, type DemoApi } from './demo-api.js';

let api: DemoApi;
let organisationId: string;
let desk: string;
let practice: PracticeView;
beforeAll(async () => {
  api = await openDemoApi();
  [organisationId = ''] = await listOrganisations(api.db);
  desk = await api.signIn('desk');
  practice = practiceView.parse(await (await fetch(`${api.url}/practice`, { headers: { cookie: desk } })).json());
}, 60_000);
afterAll(() => api.close());

/** A feed of events with `uid`, start and end by the clock of the practice, such as `20270105T090000`. */
function feed(...events: (readonly [uid: string, start: string, end: string, rule?: string])[]): string {
  const lines = events.flatMap(([uid, start, end, rule]) => [
    'BEGIN:VEVENT',
    `UID:${uid}`,
    'DTSTAMP:20270101T000000Z',
    `DTSTART:${start}`,
    `DTEND:${end}`,
    ...(rule === undefined ? [] : [`RRULE:${rule}`]),
    'SUMMARY:Private',
    'END:VEVENT',
  ]);
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Test//EN', ...lines, 'END:VCALENDAR', ''].join('\r\n');
}

const post = (resourceId: string, calendar: string, { source = 'rota', cookie = desk } = {}) =>
  fetch(`${api.url}/resources/${resourceId}/calendar`, {
    method: 'POST',
    headers: { cookie, 'content-type': 'application/json' },
    body: JSON.stringify({ source, calendar }),
  });

async function imported(resourceId: string, calendar: string, source = 'rota'): Promise<ImportedCalendar> {
  const answer = await post(resourceId, calendar, { source });
  expect(answer.status).toBe(200);
  return importedCalendar.parse(await answer.json());
}

/** Blocked time as text, with the rows that hold it: a row that was written anew would have another id. */
function blocked(resourceId: string): Promise<{ id: string; from: string; until: string }[]> {
  return inOrganisation(api.db, organisationId, (tx) =>
    tx.query(
      `SELECT id, to_char(starts_at AT TIME ZONE 'UTC', 'DD HH24:MI') AS "from",
         to_char(ends_at AT TIME ZONE 'UTC', 'DD HH24:MI') AS until
       FROM occupancy WHERE resource_id = $1 AND closure_id IS NOT NULL ORDER BY starts_at`,
      [resourceId],
    ),
  );
}

const times = async (resourceId: string) => (await blocked(resourceId)).map(({ from, until }) => `${from} to ${until}`);

const chairOf = (clinic: number, chair: number): string => {
  const found = practice.clinics[clinic]?.chairs[chair];
  if (found === undefined) throw new Error('The practice has no such chair.');
  return found.id;
};
const clinician = (index: number): string => practice.clinics[0]?.clinicians[index]?.id ?? '';

describe('a calendar that is imported for a resource', () => {
  it('blocks each busy time, rounded outward to five minutes', async () => {
    const rota = feed(
      ['a', '20270105T090200', '20270105T100300'],
      ['b', '20270106T140000', '20270106T150000', 'FREQ=DAILY;COUNT=3'],
    );
    expect(await imported(chairOf(0, 0), rota)).toMatchObject({ busy: 4, unchanged: 0, conflicts: 0, problems: [] });
    expect(await times(chairOf(0, 0))).toEqual([
      '05 09:00 to 05 10:05',
      '06 14:00 to 06 15:00',
      '07 14:00 to 07 15:00',
      '08 14:00 to 08 15:00',
    ]);
  });

  it('writes no row the second time', async () => {
    const rota = feed(['a', '20270105T090000', '20270105T100000', 'FREQ=WEEKLY;COUNT=10']);
    await imported(chairOf(0, 1), rota);
    expect(await blocked(chairOf(0, 1))).toHaveLength(10);
    const before = await everyRow(api.database);
    expect(await imported(chairOf(0, 1), rota)).toMatchObject({ busy: 10, unchanged: 10, gone: 0 });
    expect(await everyRow(api.database)).toEqual(before);
  });

  it('may be a file of 5 MB; a larger one is refused with the limit, and changes nothing', async () => {
    const chair = chairOf(0, 0);
    const some = Array.from({ length: 100 }, (_, index): [string, string, string] => {
      const day = `202703${String(10 + (index % 20))}`;
      const hour = String(8 + Math.floor(index / 20)).padStart(2, '0');
      return [`large-${String(index)}`, `${day}T${hour}0000`, `${day}T${hour}3000`];
    });
    // Quotes take twice their room in JSON.
    const padded = (characters: number) => {
      const [head = '', ...rest] = feed(...some).split('BEGIN:VEVENT');
      const comments = Array.from({ length: 65_000 }, () => `X-COMMENT:${'"'.repeat(64)}\r\n`).join('');
      return [head + comments, ...rest].join('BEGIN:VEVENT').padEnd(characters, '\r\n');
    };
    expect(await imported(chair, padded(5_000_000), 'large')).toMatchObject({ busy: 100, problems: [] });
    const before = await everyRow(api.database);
    const refusalOf = async (calendar: string) => {
      const refused = await post(chair, calendar, { source: 'large' });
      expect(refused.headers.get('content-type')).toContain('application/problem+json');
      return problem.parse(await refused.json());
    };
    expect(await refusalOf(`${padded(4_999_999)}é`)).toMatchObject({
      status: 400,
      errors: [{ path: 'calendar', problem: 'a file of at most 5 MB; export a shorter period' }],
    });
    const { status, detail } = await refusalOf('x'.repeat(11_000_000));
    expect([status, detail]).toEqual([413, expect.stringContaining('at most 10485760 bytes')]);
    expect(await everyRow(api.database)).toEqual(before);
  });

  it('frees what is gone, moves what has moved and leaves other sources alone', async () => {
    const chair = chairOf(1, 0);
    await imported(chair, feed(['w', '20270105T160000', '20270105T170000']), 'workshop');
    await imported(
      chair,
      feed(['a', '20270105T090000', '20270105T100000'], ['b', '20270105T110000', '20270105T120000']),
    );
    const changed = await imported(chair, feed(['b', '20270105T113000', '20270105T123000']));
    expect(changed).toMatchObject({ busy: 1, unchanged: 0 });
    expect(await times(chair)).toEqual(['05 11:30 to 05 12:30', '05 16:00 to 05 17:00']);
    expect(await imported(chair, feed(), 'workshop')).toMatchObject({ busy: 0 });
    expect(await times(chair)).toEqual(['05 11:30 to 05 12:30']);
  });

  it('keeps time blocked that another closure still covers', async () => {
    const person = clinician(0);
    await imported(person, feed(['course', '20270112T090000', '20270112T120000']), 'courses');
    await imported(person, feed(['meeting', '20270112T110000', '20270112T130000']), 'meetings');
    expect(await times(person)).toEqual(['12 09:00 to 12 12:00', '12 12:00 to 12 13:00']);
    await imported(person, feed(), 'courses');
    expect(await times(person)).toEqual(['12 11:00 to 12 13:00']);
  });

  it('never takes booked time, and tells what falls on it, the second time as well', async () => {
    const person = clinician(1);
    const booked = { startsAt: new Date('2027-01-13T10:00:00Z'), endsAt: new Date('2027-01-13T11:00:00Z') };
    await inOrganisation(api.db, organisationId, (tx) =>
      claim(tx, [{ ...booked, resourceId: person, purpose: 'visit' }], new Date('2027-01-04T07:00:00Z')),
    );
    const holiday = feed(['off', '20270113T090000', '20270113T170000'], ['free', '20270114T090000', '20270114T100000']);
    const told = {
      busy: 2,
      conflicts: 1,
      booked: [{ startsAt: '2027-01-13T10:00:00.000Z', endsAt: '2027-01-13T11:00:00.000Z', appointmentId: null }],
    };
    expect(await imported(person, holiday)).toMatchObject(told);
    expect(await times(person)).toEqual(['13 09:00 to 13 10:00', '13 11:00 to 13 17:00', '14 09:00 to 14 10:00']);
    expect(await imported(person, holiday)).toMatchObject({ ...told, unchanged: 2 });
  });

  it('keeps nothing of what an event is about', async () => {
    const rows: { found: boolean }[] = await inOrganisation(api.db, organisationId, (tx) =>
      tx.query(`SELECT EXISTS (SELECT FROM closure c WHERE c::text LIKE '%Private%') AS found`),
    );
    expect(rows).toEqual([{ found: false }]);
  });

  it('reports what it could not read with its line, and imports the rest', async () => {
    const broken = feed(['good', '20270120T090000', '20270120T100000'], ['bad', 'not-a-time', '20270120T100000']);
    const answer = await imported(chairOf(0, 0), broken, 'broken');
    expect(answer.busy).toBe(1);
    expect(answer.problems).toEqual([expect.objectContaining({ component: 'VEVENT' })]);
    expect(answer.problems[0]?.line).toBeGreaterThan(10);
  });

  it('refuses what is no calendar, and leaves everything as it was', async () => {
    const before = await blocked(chairOf(0, 0));
    expect((await post(chairOf(0, 0), 'Dear colleague')).status).toBe(422);
    expect(await blocked(chairOf(0, 0))).toEqual(before);
  });

  it('is for front desk and manager, and for resources of their own clinics', async () => {
    const calendar = feed();
    expect((await post(chairOf(0, 0), calendar, { cookie: await api.signIn('bench') })).status).toBe(403);
    expect((await post('01900000-0000-7000-8000-000000000000', calendar)).status).toBe(404);
    expect((await post('chair-1', calendar)).status).toBe(404);
    const [patient]: { id: string }[] = await inOrganisation(api.db, organisationId, (tx) =>
      tx.query(`SELECT id FROM resource WHERE kind = 'patient' LIMIT 1`),
    );
    expect((await post(patient?.id ?? '', calendar)).status).toBe(404);
  });
});

import { jest } from '@jest/globals';
import { until } from '../support/until.js';
import type { Manner } from './post-office.js';
import { openRemindingPractice, type RemindingPractice } from './reminding-practice.js';

jest.setTimeout(180_000);

/** A silent server is left after 20 s; everything else is a matter of moments. */
const SETTLED_WITHIN_MS = 90_000;
const MOST_ATTEMPTS_OF_A_JOB = 12;

let practice: RemindingPractice;
beforeAll(async () => {
  practice = await openRemindingPractice();
  await practice.worker.start();
});
afterAll(() => practice.close());

interface Became {
  readonly state: string;
  readonly attempts: number;
  readonly messageId: string;
  readonly lastError: string | null;
  readonly openCalls: number;
}

async function becameOf(appointmentId: string): Promise<Became> {
  const [row]: Became[] = await practice.rows((tx) =>
    tx.query(
      `SELECT r.state, r.attempts, r.message_id AS "messageId", r.last_error AS "lastError",
         (SELECT count(*)::integer FROM call_task k WHERE k.reminder_id = r.id AND k.state = 'open') AS "openCalls"
       FROM reminder r WHERE r.appointment_id = $1`,
      [appointmentId],
    ),
  );
  if (row === undefined) throw new Error('The visit has no reminder.');
  return row;
}

const hang: Manner = { kind: 'hang' };
const cut: Manner = { kind: 'cut' };
const recipient = (code: number): Manner => ({ kind: 'refuse-recipient', code });
const mail = (code: number): Manner => ({ kind: 'refuse-mail', code });

const passing = { state: 'sent', lastError: null, openCalls: 0 };
const refused = { state: 'failed', attempts: 1, lastError: 'notices.mail-refused', openCalls: 1, copies: 0 };

/** What the server does to one patient's reminder, and what becomes of it; `copies` is how often the server kept it. */
const CASES: Readonly<Record<string, { manners: Manner[]; becomes: object }>> = {
  'puts off the address twice': {
    manners: [recipient(450), recipient(451)],
    becomes: { ...passing, attempts: 3, copies: 1 },
  },
  'puts off the whole mail': { manners: [mail(452)], becomes: { ...passing, attempts: 2, copies: 1 } },
  'never answers': { manners: [hang], becomes: { ...passing, attempts: 2, copies: 1 } },
  'cuts the connection after it took the mail': { manners: [cut], becomes: { ...passing, attempts: 2, copies: 2 } },
  'refuses the address for good': { manners: [recipient(550)], becomes: refused },
  'refuses the mail for good': { manners: [mail(554)], becomes: refused },
};

describe('a mail server that', () => {
  let became: Record<string, object>;
  let neverTaken: Became;

  beforeAll(async () => {
    const dueAt = practice.inMinutes(2);
    const names = [...Object.keys(CASES), 'puts off for ever'];
    const patients = await Promise.all(names.map(async (name) => ({ name, ...(await practice.book(dueAt)) })));
    await until(() => practice.office.kept.length === names.length); // their itineraries
    const forEver = Array.from({ length: 1_000 }, () => recipient(451));
    for (const { name, mail: address } of patients) practice.office.meet(address, ...(CASES[name]?.manners ?? forEver));
    practice.clock.moveTo(new Date(dueAt.getTime() + 1));

    const ending = patients.filter(({ name }) => name in CASES);
    await until(async () => {
      const states = await Promise.all(ending.map(({ appointmentId }) => becameOf(appointmentId)));
      return states.every(({ state }) => state !== 'scheduled');
    }, SETTLED_WITHIN_MS);
    became = {};
    for (const { name, mail: address, appointmentId } of ending) {
      const { messageId, ...rest } = await becameOf(appointmentId);
      const copies = practice.office.mailsTo(address).filter((one) => one.messageId === messageId).length;
      became[name] = { ...rest, copies };
    }
    neverTaken = await becameOf(patients.at(-1)?.appointmentId ?? '');
  });

  it.each(Object.entries(CASES))('%s', (name, { becomes }) => {
    expect(became[name]).toEqual(becomes);
  });

  it('puts off for ever is asked again and again, within bounds, and the reminder stays owed', () => {
    const { state, attempts, lastError } = neverTaken;
    expect({ state, lastError }).toEqual({ state: 'scheduled', lastError: 'notices.mail-temporary' });
    expect(attempts).toBeGreaterThan(1);
    expect(attempts).toBeLessThanOrEqual(MOST_ATTEMPTS_OF_A_JOB);
  });
});

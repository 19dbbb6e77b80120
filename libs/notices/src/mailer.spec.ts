import type { AddressInfo } from 'node:net';
import PostalMime, { type Email } from 'postal-mime';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { visitCalendar } from '@archwright/interop';
import { createMailer, type Mail } from './mailer.js';
import { messageIdOf } from './message-id.js';

const CALENDAR = visitCalendar(
  { uid: 'v1', sequence: 1, startMs: 0, endMs: 60_000, summary: 'Appointment', state: 'confirmed' },
  { organiser: { mail: 'desk@p.example', name: 'Desk' }, attendeeMail: 'ada@example.org' },
  0,
);

function aMail(changes: Partial<Mail> = {}): Mail {
  return {
    to: 'ada@example.org',
    subject: 'تذكير بموعدك',
    text: 'Guten Tag ⁨Zoë⁩',
    messageId: messageIdOf('0193a1b2', 'p.example'),
    language: 'de',
    ...changes,
  };
}

/** A real server on a free loopback port, and what it took. */
async function aServer(options: SMTPServerOptions = {}) {
  const taken: { recipients: string[]; email: Email }[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, session, done) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        void PostalMime.parse(Buffer.concat(chunks)).then((email) => {
          taken.push({ recipients: session.envelope.rcptTo.map(({ address }) => address), email });
          done();
        });
      });
    },
    ...options,
  });
  // A client that hangs up is an event of the server, not a failure of the test.
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  const mailer = createMailer({
    smtpUrl: `smtp://127.0.0.1:${String(port)}`,
    from: { mail: 'desk@p.example', name: 'Desk, Riverside' },
  });
  const close = async () => {
    mailer.close();
    await new Promise<void>((resolve) => {
      server.close(resolve);
    });
  };
  return { mailer, taken, close };
}

const answer = (code: number) => Object.assign(new Error('no <ada@example.org> here'), { responseCode: code });

describe('the mail channel', () => {
  it('delivers text and calendar as the server sees them', async () => {
    const { mailer, taken, close } = await aServer();
    await mailer.send(aMail({ calendar: CALENDAR }));
    await close();
    expect(taken).toHaveLength(1);
    const [first] = taken;
    const email = first?.email;
    expect(first?.recipients).toEqual(['ada@example.org']);
    expect(email?.from).toMatchObject({ address: 'desk@p.example', name: 'Desk, Riverside' });
    expect([email?.subject, email?.text?.trim(), email?.messageId]).toEqual([
      aMail().subject,
      aMail().text,
      aMail().messageId,
    ]);
    const header = (key: string) => email?.headers.find((each) => each.key === key)?.value;
    expect([header('auto-submitted'), header('content-language')]).toEqual(['auto-generated', 'de']);
    const calendars = email?.attachments.filter(({ mimeType }) => /calendar|ics/.test(mimeType)) ?? [];
    expect(calendars.length).toBeGreaterThan(0);
    expect(calendars.some(({ method }) => method === 'REQUEST')).toBe(true);
    for (const { content } of calendars) {
      const text = typeof content === 'string' ? content : Buffer.from(content as ArrayBuffer).toString();
      // A reader of mail may turn CRLF of a text part into its own line ends.
      expect(text.trim().split(/\r?\n/)).toEqual(CALENDAR.content.trim().split('\r\n'));
    }
  });

  it('gives a second attempt the same message id', async () => {
    const { mailer, taken, close } = await aServer();
    await mailer.send(aMail());
    await mailer.send(aMail());
    await close();
    expect(new Set(taken.map(({ email }) => email.messageId)).size).toBe(1);
  });

  it.each([
    [
      'an unknown recipient',
      {
        onRcptTo: (_address, _session, done) => {
          done(answer(550));
        },
      },
      'notices.mail-refused',
    ],
    [
      'a full mailbox for now',
      {
        onRcptTo: (_address, _session, done) => {
          done(answer(452));
        },
      },
      'notices.mail-temporary',
    ],
    [
      'a greylisting server',
      {
        onMailFrom: (_address, _session, done) => {
          done(answer(451));
        },
      },
      'notices.mail-temporary',
    ],
    [
      'a server that bars us',
      {
        onMailFrom: (_address, _session, done) => {
          done(answer(550));
        },
      },
      'notices.mail-temporary',
    ],
    [
      'a message refused after its data',
      {
        onData: (stream, _session, done) => {
          stream
            .on('end', () => {
              done(answer(554));
            })
            .resume();
        },
      },
      'notices.mail-refused',
    ],
  ] satisfies [string, SMTPServerOptions, string][])('names %s, without the address', async (_, options, code) => {
    const { mailer, close } = await aServer(options);
    const failure: unknown = await mailer.send(aMail()).catch((error: unknown) => error);
    await close();
    expect(failure).toMatchObject({ code });
    expect(JSON.stringify(failure) + (failure as Error).message).not.toContain('ada@');
  });

  it('asks for a later attempt when nobody listens', async () => {
    const { mailer, close } = await aServer();
    await close();
    await expect(mailer.send(aMail())).rejects.toMatchObject({ code: 'notices.mail-temporary' });
  });

  it.each([
    ['a header in the subject', { subject: 'Hello\r\nBcc: eve@example.org' }],
    ['two recipients', { to: 'ada@example.org, eve@example.org' }],
    ['a header in the address', { to: 'ada@example.org\nBcc:eve@example.org' }],
    ['a header in the message id', { messageId: '<a@b>\r\nBcc: eve@example.org' }],
    ['a header in the language', { language: 'de\nBcc: x' }],
  ])('refuses %s before anything is sent', async (_, changes) => {
    const { mailer, taken, close } = await aServer();
    await expect(mailer.send(aMail(changes))).rejects.toMatchObject({ code: 'notices.mail-refused' });
    await close();
    expect(taken).toEqual([]);
  });
});

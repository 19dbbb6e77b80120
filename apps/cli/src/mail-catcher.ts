import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { join } from 'node:path';
import PostalMime from 'postal-mime';
import { SMTPServer } from 'smtp-server';
import type { CaughtMail } from '@archwright/contracts';

const KEPT = 500;
const LARGEST_BYTES = 2 * 1024 * 1024;

export interface MailCatcher {
  /** Where the worker sends. */
  readonly smtpUrl: string;
  /** Answers `{ items: CaughtMail[] }`, newest first, to every GET. */
  readonly httpUrl: string;
  stop(): Promise<void>;
}

/** A mail server of the demonstration: keeps every message in `folder` as it came, delivers none. Loopback only. */
export async function startMailCatcher(folder: string): Promise<MailCatcher> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  let count = 0;
  const smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    size: LARGEST_BYTES,
    onData(stream, _session, done) {
      buffer(stream).then(
        (message) => {
          count += 1;
          // Time first, so that names sort in order of arrival; moved into place when whole.
          const name = `${new Date().toISOString().replaceAll(':', '')}-${String(count).padStart(4, '0')}.eml`;
          writeFileSync(join(folder, `${name}.part`), message, { mode: 0o600 });
          renameSync(join(folder, `${name}.part`), join(folder, name));
          done();
        },
        (error: unknown) => {
          done(error instanceof Error ? error : new Error(String(error)));
        },
      );
    },
  });
  const http = createServer((_request, response) => {
    caughtIn(folder).then(
      (items) => response.setHeader('content-type', 'application/json').end(JSON.stringify({ items })),
      () => response.writeHead(500).end(),
    );
  });
  await new Promise<void>((resolve, reject) => {
    smtp.on('error', reject); // a sender that hangs up is reported here too, after the start
    smtp.listen(0, '127.0.0.1', resolve);
  });
  await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve));
  return {
    smtpUrl: `smtp://127.0.0.1:${String(portOf(smtp.server))}`,
    httpUrl: `http://127.0.0.1:${String(portOf(http))}`,
    stop: async () => {
      http.closeAllConnections();
      await Promise.all([
        new Promise<void>((resolve) => {
          smtp.close(resolve);
        }),
        new Promise<void>((resolve) =>
          http.close(() => {
            resolve();
          }),
        ),
      ]);
    },
  };
}

function portOf(server: Pick<Server, 'address'>): number {
  return (server.address() as AddressInfo).port; // both listen on TCP
}

async function caughtIn(folder: string): Promise<CaughtMail[]> {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.eml'))
    .sort()
    .reverse();
  return Promise.all(names.slice(0, KEPT).map((name) => readMail(join(folder, name), name)));
}

async function readMail(path: string, name: string): Promise<CaughtMail> {
  const mail = await PostalMime.parse(readFileSync(path), { attachmentEncoding: 'utf8' });
  const calendar = mail.attachments.find(({ mimeType }) => mimeType === 'text/calendar');
  return {
    to: (mail.to ?? []).map(({ address }) => address ?? '').join(', '),
    subject: mail.subject ?? '',
    text: mail.text ?? '',
    receivedAt: name.replace(/T(\d\d)(\d\d)(\d\d\.\d+Z)-.*$/, 'T$1:$2:$3'),
    messageId: mail.messageId ?? '',
    calendar: typeof calendar?.content === 'string' ? calendar.content : null,
  };
}

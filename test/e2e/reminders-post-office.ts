import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import PostalMime from 'postal-mime';
import { SMTPServer } from 'smtp-server';

export interface ReceivedMail {
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly messageId: string;
  readonly calendar: string;
}

/** A mail server on loopback: takes mail, or answers as a test tells it to. */
export class PostOffice {
  readonly received: ReceivedMail[] = [];
  /** Message ids of mails that were offered whole, taken or not. */
  readonly offered: string[] = [];
  /** What the next recipients are answered, instead of yes. */
  readonly refusals: { readonly code: number }[] = [];
  /** While true, whole mails get no answer at all. */
  isSilent = false;
  private readonly server: SMTPServer;

  private constructor() {
    this.server = new SMTPServer({
      authOptional: true,
      disabledCommands: ['STARTTLS'],
      onRcptTo: (_address, _session, done) => {
        const refusal = this.refusals.shift();
        if (refusal === undefined) done();
        else done(Object.assign(new Error('not now'), { responseCode: refusal.code }));
      },
      onData: (stream, _session, done) => {
        buffer(stream)
          .then((bytes) => PostalMime.parse(bytes, { attachmentEncoding: 'utf8' }))
          .then((mail) => {
            this.offered.push(mail.messageId ?? '');
            if (this.isSilent) return;
            this.received.push(readMail(mail));
            done();
          }, done);
      },
    });
    // A sender that is killed hangs up; that is what some tests do.
    this.server.on('error', () => undefined);
  }

  static async open(): Promise<PostOffice> {
    const office = new PostOffice();
    await new Promise<void>((resolve) => office.server.listen(0, '127.0.0.1', resolve));
    return office;
  }

  get url(): string {
    return `smtp://127.0.0.1:${String((this.server.server.address() as AddressInfo).port)}`;
  }

  mailsTo(address: string): ReceivedMail[] {
    return this.received.filter(({ to }) => to === address);
  }

  close(): Promise<void> {
    return new Promise((resolve) => {
      this.server.close(resolve);
    });
  }
}

type Parsed = Awaited<ReturnType<typeof PostalMime.parse>>;

function readMail({ to, subject, text, messageId, attachments }: Parsed): ReceivedMail {
  const calendar = attachments.find(({ mimeType }) => mimeType === 'text/calendar')?.content;
  return {
    to: (to ?? []).map(({ address }) => address ?? '').join(', '),
    subject: subject ?? '',
    text: text ?? '',
    messageId: messageId ?? '',
    // RFC 5545, section 3.1: a line may be folded anywhere.
    calendar: typeof calendar === 'string' ? calendar.replace(/\r\n[ \t]/g, '') : '',
  };
}

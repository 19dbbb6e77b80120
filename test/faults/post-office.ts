import type { AddressInfo, Socket } from 'node:net';
import { text } from 'node:stream/consumers';
import { setTimeout as pause } from 'node:timers/promises';
import { SMTPServer } from 'smtp-server';

/** What happens to the next mail to one address, instead of a yes. */
export type Manner =
  /** The address is answered with this code. */
  | { readonly kind: 'refuse-recipient'; readonly code: number }
  /** The whole mail is answered with this code. */
  | { readonly kind: 'refuse-mail'; readonly code: number }
  /** The whole mail is never answered; the server does not keep it. */
  | { readonly kind: 'hang' }
  /** The whole mail is kept, but the connection ends before the yes. */
  | { readonly kind: 'cut' };

export interface ArrivedMail {
  readonly to: string;
  readonly messageId: string;
  readonly subject: string;
}

/** A mail server on loopback that keeps what arrives whole, answers late, and badly where a test says so. */
export class PostOffice {
  /** Kept mails, in order of arrival; one whose yes nobody heard counts as well. */
  readonly kept: ArrivedMail[] = [];
  /** How long the server thinks before its yes to a mail. */
  thinkingMs: () => number = () => 0;
  private readonly manners = new Map<string, Manner[]>();
  private readonly sockets = new Map<number, Socket>();
  private readonly server: SMTPServer;

  private constructor() {
    this.server = new SMTPServer({
      authOptional: true,
      disabledCommands: ['STARTTLS'],
      closeTimeout: 100,
      onRcptTo: ({ address }, _session, done) => {
        const manner = this.manners.get(address)?.[0];
        if (manner?.kind !== 'refuse-recipient') {
          done();
          return;
        }
        this.manners.get(address)?.shift();
        done(refusalWith(manner.code));
      },
      onData: (stream, session, done) => {
        const to = session.envelope.rcptTo.map(({ address }) => address).join(', ');
        text(stream)
          .then((mail) => this.answer(to, mail, this.sockets.get(session.remotePort)))
          .then((answer) => {
            if (answer === 'yes') done();
            else if (answer !== 'nothing') done(answer);
          }, done);
      },
    });
    // A sender that is killed hangs up.
    this.server.on('error', () => undefined);
    this.server.server.on('connection', (socket: Socket) => {
      const port = socket.remotePort ?? 0;
      this.sockets.set(port, socket);
      socket.once('close', () => this.sockets.delete(port));
    });
  }

  static async open(): Promise<PostOffice> {
    const office = new PostOffice();
    await new Promise<void>((resolve) => office.server.listen(0, '127.0.0.1', resolve));
    return office;
  }

  get url(): string {
    return `smtp://127.0.0.1:${String((this.server.server.address() as AddressInfo).port)}`;
  }

  /** Nothing more arrives from senders that are gone. */
  get isQuiet(): boolean {
    return this.sockets.size === 0;
  }

  /** The next mails to the address meet these manners, one each; later ones are taken. */
  meet(address: string, ...manners: Manner[]): void {
    this.manners.set(address, manners);
  }

  mailsTo(address: string): ArrivedMail[] {
    return this.kept.filter(({ to }) => to === address);
  }

  close(): Promise<void> {
    return new Promise((resolve) => {
      this.server.close(resolve);
    });
  }

  private async answer(to: string, mail: string, socket: Socket | undefined): Promise<'yes' | 'nothing' | Error> {
    const manner = this.manners.get(to)?.shift();
    if (manner?.kind === 'hang') return 'nothing';
    if (manner?.kind === 'refuse-mail') return refusalWith(manner.code);
    this.kept.push({ to, messageId: headerOf(mail, 'Message-ID'), subject: headerOf(mail, 'Subject') });
    if (manner?.kind === 'cut') {
      socket?.destroy();
      return 'nothing';
    }
    await pause(this.thinkingMs());
    return 'yes';
  }
}

const refusalWith = (code: number): Error => Object.assign(new Error('not now'), { responseCode: code });

/** A folded header stands on several lines (RFC 5322, section 2.2.3). */
function headerOf(mail: string, name: string): string {
  const head = mail.slice(0, mail.indexOf('\r\n\r\n')).replace(/\r\n[ \t]+/g, ' ');
  return new RegExp(`^${name}:\\s*(.*)$`, 'im').exec(head)?.[1]?.trim() ?? '';
}

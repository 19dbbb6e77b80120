import { createTransport } from 'nodemailer';
import { z } from 'zod';
import { caughtMail } from '@archwright/contracts';
import { startMailCatcher, type MailCatcher } from '../../apps/cli/src/mail-catcher.js';
import { temporaryFolder } from '../support/service.js';

const caught = z.object({ items: z.array(caughtMail) });

describe('the mail catcher of the demonstration', () => {
  const folder = temporaryFolder();
  let catcher: MailCatcher;
  beforeAll(async () => {
    catcher = await startMailCatcher(folder.path);
  });
  afterAll(async () => {
    await catcher.stop();
    folder.remove();
  });
  const read = async () => caught.parse(await (await fetch(catcher.httpUrl)).json()).items;

  async function send(subject: string): Promise<void> {
    const transport = createTransport(catcher.smtpUrl);
    await transport.sendMail({
      from: 'Appointments <appointments@example.test>',
      to: 'ismene@example.test',
      subject,
      text: 'Your visit is on Friday, 12 February 2027 at 09:20.',
      messageId: `<${subject}@example.test>`,
      icalEvent: { method: 'REQUEST', content: 'BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n' },
    });
    transport.close();
  }

  it('shows what was sent, newest first, with the calendar part', async () => {
    await send('first');
    await send('second');
    const mails = await read();
    expect(mails.map(({ subject }) => subject)).toEqual(['second', 'first']);
    expect(mails[0]).toMatchObject({ to: 'ismene@example.test', messageId: '<second@example.test>' });
    expect(mails[0]?.text).toContain('Friday, 12 February 2027');
    expect(mails[0]?.calendar).toContain('BEGIN:VCALENDAR');
  });

  it('keeps the mail over a restart', async () => {
    await catcher.stop();
    catcher = await startMailCatcher(folder.path);
    expect((await read()).length).toBe(2);
  });
});

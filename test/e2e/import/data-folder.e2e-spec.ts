import { join } from 'node:path';
import { runCommandLine, startService, temporaryFolder } from '../../support/service.js';

const NASTY = join(process.cwd(), 'test/e2e/import/nasty.csv');

describe('importing into the practice of a data folder', () => {
  const folder = temporaryFolder();
  afterAll(() => {
    folder.remove();
  });
  const importNasty = async () => {
    const args = ['import', 'patients', NASTY, '--date-order', 'dmy', '--data', folder.path];
    const { ended, answered, said } = runCommandLine(args, { DATABASE_URL: '' });
    return { code: await ended, answer: answered(), said: said() };
  };

  it('refuses a folder that holds none', async () => {
    const { code, said } = await importNasty();
    expect(code).toBe(1);
    expect(said).toContain('There is no practice in');
  });

  it('uses the database of the running service, and starts it when the service has ended', async () => {
    const service = await startService(folder.path, ['--no-cases']);
    const running = await importNasty().finally(() => service.stop());
    expect(running.answer).toContain('added 4');
    const stopped = await importNasty();
    expect(stopped.answer).toContain('added 0, updated 0, already there 4');
    expect(stopped.said).toContain('Starting the database for this command');
  }, 150_000);
});

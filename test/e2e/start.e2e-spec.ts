import { execFileSync } from 'node:child_process';
import { runCommandLine, startService, temporaryFolder, type Service } from '../support/service.js';
import { until } from '../support/until.js';

/** Processes of a run: the starting one is named by its folder, the services by the children of it. */
function processesOf(parent: number, folder: string): string[] {
  const table = execFileSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' }).trim().split('\n');
  return table.filter((line) => line.includes(folder) || line.trim().split(/\s+/)[1] === String(parent));
}

describe('npm start', () => {
  const folder = temporaryFolder();
  let service: Service;
  beforeAll(async () => {
    service = await startService(folder.path, ['--no-demo']);
  }, 120_000);
  afterAll(async () => {
    await service.stop();
    folder.remove();
  });

  it('is ready when it says so', async () => {
    const ready = await fetch(`${service.url}/health/ready`);
    expect(ready.status).toBe(200);
    expect(await ready.json()).toEqual({ status: 'ready' });
  });

  it('sends its pages compressed to a browser that takes them, and plain to one that does not', async () => {
    const page = await (await fetch(service.url)).text();
    const script = new URL(/src="([^"]+\.js)"/.exec(page)?.[1] ?? '', service.url);
    const compressed = await fetch(script, { headers: { 'accept-encoding': 'br' } });
    const plain = await fetch(script, { headers: { 'accept-encoding': 'identity' } });
    expect(compressed.headers.get('content-encoding')).toBe('br');
    expect(compressed.headers.get('vary')).toContain('accept-encoding');
    expect(plain.headers.get('content-encoding')).toBeNull();
    expect(await compressed.text()).toBe(await plain.text());
  });

  it('refuses a second start on the same folder, and names the process that holds it', async () => {
    const second = runCommandLine(['start', '--port', '0', '--data', folder.path]);
    expect(await second.ended).toBe(1);
    expect(second.said()).toContain(`in use by process ${String(service.process.pid)}`);
  });

  it('refuses a port that is taken', async () => {
    const other = temporaryFolder();
    const second = runCommandLine(['start', '--port', new URL(service.url).port, '--data', other.path]);
    expect(await second.ended).toBe(1);
    expect(second.said()).toContain('is in use by another program');
    other.remove();
  });

  it('refuses an option that it does not know', async () => {
    const second = runCommandLine(['start', '--prot', '3000']);
    expect(await second.ended).toBe(2);
    expect(second.said()).toContain("Unknown option '--prot'");
  });

  it('leaves no process behind when it is stopped, and keeps its data', async () => {
    const pid = Number(service.process.pid);
    expect(processesOf(pid, folder.path).length).toBeGreaterThanOrEqual(4);
    expect(await service.stop('SIGTERM')).toBe(0);
    expect(processesOf(pid, folder.path)).toEqual([]);
    service = await startService(folder.path, ['--no-demo']);
  }, 120_000);

  it('stops the rest and says so when a part dies', async () => {
    const pid = Number(service.process.pid);
    const worker = processesOf(pid, folder.path).find((line) => line.includes('worker/main.js'));
    process.kill(Number(worker?.trim().split(/\s+/)[0]), 'SIGKILL');
    await until(() => service.process.exitCode !== null);
    expect(service.process.exitCode).toBe(1);
    expect(service.said()).toContain('The worker was killed by SIGKILL');
    expect(processesOf(pid, folder.path)).toEqual([]);
    service = await startService(folder.path, ['--no-demo']);
  }, 120_000);

  it('starts again after it was killed outright, over the database that stayed behind', async () => {
    const children = processesOf(Number(service.process.pid), folder.path).map((line) =>
      Number(line.trim().split(/\s+/)[0]),
    );
    await service.stop('SIGKILL');
    service = await startService(folder.path, ['--no-demo']);
    const alive = (pid: number) =>
      execFileSync('ps', ['-eo', 'pid='], { encoding: 'utf8' }).split(/\s+/).includes(String(pid));
    await until(() => !children.some(alive));
    expect((await fetch(`${service.url}/health/ready`)).status).toBe(200);
  }, 120_000);
});

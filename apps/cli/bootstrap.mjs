/**
 * First step of every command, in plain Node so that it runs before anything is installed: installs the locked
 * packages, builds what is older than its sources, then hands over to the built command line.
 *
 * Progress goes to standard error: standard output belongs to the command's answer.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const MINIMUM_NODE = [20, 19];
const STOP_SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];
const say = (line) => process.stderr.write(`${line}\n`);

function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > MINIMUM_NODE[0] || (major === MINIMUM_NODE[0] && minor >= MINIMUM_NODE[1])) return;
  say(`This is Node ${process.versions.node}; Archwright needs Node ${MINIMUM_NODE.join('.')} or newer.`);
  process.exit(1);
}

/** Runs a program to its end; its output goes to standard error. */
function run(command, args) {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, NO_COLOR: '1' };
    const child = spawn(command, args, {
      cwd: root,
      env,
      stdio: ['ignore', 2, 2],
      shell: process.platform === 'win32',
    });
    child.once('error', reject);
    child.once('exit', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`"${command} ${args.join(' ')}" ended with code ${code}; its own words are above.`));
    });
  });
}

function filesBelow(path) {
  if (!existsSync(join(root, path))) return [];
  return readdirSync(join(root, path), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(e2e-)?spec\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

/** Hash over names and contents, so that a checkout with new times but old text is not built again. */
function hashOf(folders, files) {
  const hash = createHash('sha256');
  for (const file of [...folders.flatMap(filesBelow), ...files.map((name) => join(root, name))]) {
    if (existsSync(file)) hash.update(file.slice(root.length)).update('\0').update(readFileSync(file));
  }
  return hash.digest('hex');
}

const isStamped = (stamp, value) => existsSync(stamp) && readFileSync(stamp, 'utf8') === value;

async function install() {
  const stamp = join(root, 'node_modules/.installed-lock');
  const wanted = hashOf([], ['package-lock.json', '.npmrc']) + ` ${process.platform} ${process.arch}`;
  if (isStamped(stamp, wanted)) return;
  say('Installing the locked packages (once, a minute or two) ...');
  await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  writeFileSync(stamp, wanted);
}

async function buildWhenOlder(name, folders, files, build) {
  const stamp = join(root, `dist/.${name}-sources`);
  const wanted = hashOf(folders, [...files, 'package-lock.json', 'tsconfig.json']);
  if (isStamped(stamp, wanted)) return;
  say(`Building ${name} ...`);
  rmSync(stamp, { force: true });
  await build();
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(stamp, wanted);
}

async function build(withPages) {
  const nest = join(root, 'node_modules/@nestjs/cli/bin/nest.js');
  const shared = ['libs', 'migrations'];
  const tools = ['nest-cli.json', '.config/rspack.config.mjs'];
  for (const app of ['cli', 'api', 'worker']) {
    if (!existsSync(join(root, `apps/${app}/src/main.ts`))) continue;
    const own = app === 'cli' ? ['apps/cli', 'test/bench'] : [`apps/${app}`];
    await buildWhenOlder(app, [...own, ...shared], tools, () => run(process.execPath, [nest, 'build', app]));
  }
  if (withPages && existsSync(join(root, 'apps/web/vite.config.ts'))) {
    const vite = join(root, 'node_modules/vite/bin/vite.js');
    await buildWhenOlder('web', ['apps/web', 'libs'], [], () =>
      run(process.execPath, [vite, 'build', '--config', 'apps/web/vite.config.ts', '--logLevel', 'warn']),
    );
  }
}

/** Runs the built command line; a stop signal reaches it once and its way of ending becomes ours. */
function handOver(args) {
  const main = join(root, 'dist/apps/cli/main.js');
  const child = spawn(process.execPath, ['--enable-source-maps', main, ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, INIT_CWD: process.env.INIT_CWD ?? process.cwd() },
  });
  // A terminal signals the whole foreground group, so the child has it already; it ignores the repetition.
  for (const signal of STOP_SIGNALS) process.on(signal, () => child.kill(signal));
  stopWithNpm(() => child.kill('SIGTERM'));
  child.once('exit', (code, signal) => process.exit(code ?? (signal ? 1 : 0)));
}

/** These answer from files and the database alone; of the benches, only the one of the screens needs pages. */
const WITHOUT_PAGES = new Set(['cli', 'lint', 'bench', 'check:reference']);
const needsPages = (command, [first]) => !WITHOUT_PAGES.has(command) || (command === 'bench' && first === 'web');

/** npm's shell dies of a stop signal without passing it on; then we have another parent, and nobody waits for us. */
function stopWithNpm(stop) {
  if (process.env.npm_lifecycle_event === undefined || process.platform === 'win32') return;
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    stop();
  }, 250);
  watch.unref();
}

requireNode();
try {
  const [command, ...args] = process.argv.slice(2);
  await install();
  await build(needsPages(command, args));
  if (command !== 'build') handOver(command === 'cli' ? args : [command, ...args]);
} catch (error) {
  say(error instanceof Error ? error.message : String(error));
  if (process.argv[2] === 'test') process.stdout.write('0 passed, 1 failed\n');
  process.exit(1);
}

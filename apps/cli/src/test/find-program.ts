import { accessSync, constants } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';
import { runProgram } from './run-program.js';

/** First of the named programs that can be run, as a full path. */
export function findProgram(names: readonly string[]): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = names.flatMap((name) => (isAbsolute(name) ? [name] : folders.map((folder) => join(folder, name))));
  return candidates.find((path) => {
    try {
      accessSync(path, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

/** Finds a program, or installs the Debian package that brings it where we may. */
export async function findOrInstall(names: readonly string[], debianPackage: string): Promise<string | undefined> {
  const found = findProgram(names);
  if (found !== undefined) return found;
  const apt = findProgram(['apt-get']);
  if (apt === undefined || process.getuid?.() !== 0) return undefined;
  process.stderr.write(`Installing ${debianPackage} by apt-get ...\n`);
  // RUNLEVEL keeps a package from starting a service of its own.
  const env = { DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' };
  const install = () =>
    runProgram(apt, ['install', '-y', '-q', '--no-install-recommends', debianPackage], { isShown: false, env });
  if ((await install()).code !== 0) {
    await runProgram(apt, ['update', '-q'], { isShown: false, env });
    const { code, output } = await install();
    if (code !== 0) process.stderr.write(`${output.trimEnd().split('\n').slice(-3).join('\n')}\n`);
  }
  return findProgram(names);
}

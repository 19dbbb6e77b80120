import { existsSync } from 'node:fs';
import type { WorkerOptions } from 'node:worker_threads';

/** A module that a thread runs, and how to run it. */
export interface ThreadEntry {
  readonly url: URL;
  readonly options: WorkerOptions;
}

/** Loader that lets a thread run our sources as they are; a built application holds none and needs none. */
const SOURCES_LOADER = '../../../../.config/sources-loader.mjs';

/**
 * The thread's module beside the module that asks: built on its own beside a built application, else the source.
 *
 * @param name file name without its ending
 * @param besideUrl `import.meta.url` of the module that asks
 */
export function threadEntry(name: string, besideUrl: string): ThreadEntry {
  const built = new URL(`./${name}.js`, besideUrl);
  if (existsSync(built)) return { url: built, options: {} };
  const loader = new URL(SOURCES_LOADER, import.meta.url);
  return { url: new URL(`./${name}.ts`, besideUrl), options: { execArgv: ['--import', loader.href] } };
}

import { findOrInstall } from './find-program.js';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
/** Where a Mac keeps it, outside the search path. */
const ON_MAC = '/Applications/Chromium.app/Contents/MacOS/Chromium';

/** The Chromium named by `CHROMIUM_PATH`, the system's, or a newly installed one; undefined when there is none to be had. */
export function findChromium(): Promise<string | undefined> {
  const chosen = process.env.CHROMIUM_PATH;
  return findOrInstall([...(chosen === undefined ? [] : [chosen]), ...NAMES, ON_MAC], 'chromium');
}

import { messages as english } from './en/paths.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/paths.js'), ar: () => import('./ar/paths.js') });
const { paths } = said;
const counted = (n: number) => ({ n });
const ofCode = (code: string) => ({ code });
const titled = (title: string) => ({ title });

/** Words of the screens on which treatment paths are looked at, changed and published. */
export const pathWords = {
  ...paths,
  sentence: filled(paths.sentence, (paths: number, versions: number) => ({ paths, versions })),
  shipped: filled(paths.shipped, (on: string) => ({ on })),
  by: filled(paths.by, (on: string, name: string) => ({ on, name })),
  head: filled(paths.head, (code: string, version: number) => ({ code, version })),
  headWith: filled(paths.headWith, (code: string, version: number, summary: string) => ({ code, version, summary })),
  pictureOf: filled(paths.pictureOf, (title: string, visits: number, phases: number) => ({ title, visits, phases })),
  visitOf: filled(paths.visitOf, titled),
  stepOf: filled(paths.stepOf, titled),
  minutes: filled(paths.minutes, (min: number, typical: number, max: number) => ({ min, typical, max })),
  turnaround: filled(paths.turnaround, (usualMin: number, usualMax: number, rush: number, before: string) => ({
    usualMin,
    usualMax,
    rush,
    before,
  })),
  waitOf: {
    least: filled(paths.waitOf.least, (from: string, least: string) => ({ from, least })),
    most: filled(paths.waitOf.most, (from: string, most: string) => ({ from, most })),
    both: filled(paths.waitOf.both, (from: string, least: string, most: string) => ({ from, least, most })),
  },
  spans: {
    'calendar-days': filled(paths.spans['calendar-days'], counted),
    'lab-working-days': filled(paths.spans['lab-working-days'], counted),
  },
  differences: filled(paths.differences, counted),
  editTitle: filled(paths.editTitle, titled),
  faults: filled(paths.faults, counted),
  means: {
    skill: filled(paths.means.skill, ofCode),
    kit: filled(paths.means.kit, ofCode),
    centre: filled(paths.means.centre, ofCode),
  },
  publish: filled(paths.publish, (version: number) => ({ version })),
};

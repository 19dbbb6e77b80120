import { messages as english } from './en/remake-log.js';
import { filled, inLanguage } from './messages.js';

const { remakeLog: said } = await inLanguage(english, {
  de: () => import('./de/remake-log.js'),
  ar: () => import('./ar/remake-log.js'),
});

/** Words of what was made again. */
export const remakeLogWords = {
  ...said,
  sentence: filled(said.sentence, (remakes: number, cases: number, from: string, until: string) => ({
    remakes,
    cases,
    from,
    until,
  })),
  pictureOf: filled(said.pictureOf, (title: string, list: string) => ({ title, list })),
  bar: filled(said.bar, (name: string, remakes: number) => ({ name, remakes })),
  showThese: filled(said.showThese, (name: string, remakes: number) => ({ name, remakes })),
  listOf: filled(said.listOf, (what: string) => ({ what })),
  both: filled(said.both, (cause: string, origin: string) => ({ cause, origin })),
  entry: filled(said.entry, (origin: string, arches: string) => ({ origin, arches })),
  found: filled(said.found, (stage: string) => ({ stage })),
  back: filled(said.back, (origin: string) => ({ origin })),
  discarded: filled(said.discarded, (what: string) => ({ what })),
  accepted: filled(said.accepted, (when: string) => ({ when })),
  alertOf: filled(said.alertOf, (number: string) => ({ number })),
};

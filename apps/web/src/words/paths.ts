import type { PathDifference } from '@archwright/protocol';
import { count } from './plural.js';

/** Words of the screens on which treatment paths are looked at, changed and published. */
export const pathWords = {
  title: 'Treatment paths',
  link: 'Treatment paths',
  sentence: (paths: number, versions: number) =>
    `${count(paths, 'path', 'paths')} in ${count(versions, 'version', 'versions')}. Open cases keep the version that they began with.`,
  loading: 'the treatment paths',
  back: 'All paths',
  columns: {
    title: 'Path',
    version: 'Version',
    arches: 'Arches',
    visits: 'Visits',
    published: 'Published',
    cases: 'Open cases',
  },
  shipped: (on: string) => `${on}, with the application`,
  by: (on: string, name: string) => `${on}, by ${name}`,
  withdrawn: 'withdrawn',
  latest: 'latest',
  head: (code: string, version: number) => `${code}, version ${String(version)}`,
  edit: 'Change it or copy it',
  withdraw: 'Keep new cases from it',
  offerAgain: 'Offer it to new cases again',
  picture: 'The path as a picture',
  pictureOf: (title: string, visits: number, phases: number) =>
    `${title}: ${count(visits, 'visit', 'visits')} with ${count(phases, 'stretch', 'stretches')} of laboratory work between them. The table below says the same.`,
  order: 'The path as a table',
  orderColumns: {
    part: 'Part',
    what: 'What',
    minutes: 'Minutes',
    after: 'After',
    waits: 'Waits',
    guards: 'Needs first',
  },
  kinds: { visit: 'Visit', step: 'Laboratory' },
  minutes: (min: number, typical: number, max: number) =>
    `${String(min)} to ${String(max)}, usually ${String(typical)}`,
  turnaround: (usualMin: number, usualMax: number, rush: number) =>
    `back after ${String(usualMin)} to ${String(usualMax)} laboratory days, ${String(rush)} in a rush`,
  atLeast: 'at least',
  atMost: 'at most',
  units: { minutes: 'min', 'calendar-days': 'days', 'lab-working-days': 'laboratory days' },
  compare: 'Compare with',
  noCompare: 'no other version',
  differences: (n: number) => (n === 0 ? 'No difference.' : count(n, 'difference', 'differences')),
  differenceColumns: { at: 'Where', kind: 'What', before: 'Before', after: 'After' },
  differenceKinds: {
    added: 'added',
    removed: 'removed',
    changed: 'changed',
    moved: 'put in another order',
  } satisfies Record<PathDifference['kind'], string>,
  editTitle: (title: string) => `Change: ${title}`,
  editSentence: 'Nothing changes for open cases. What you type stays here until it is published or given up.',
  fields: {
    code: 'Code',
    codeHint: 'Another code makes a new path out of the copy.',
    title: 'Title',
    summary: 'Summary',
    least: 'Least',
    usual: 'Usual',
    most: 'Most',
    assistant: 'Assistant',
    usualMin: 'Usual, from',
    usualMax: 'Usual, to',
    rush: 'Rush',
  },
  visits: 'Visits and their minutes',
  waits: 'Waits',
  phases: 'Laboratory days',
  wait: 'Wait',
  phase: 'Laboratory work',
  text: 'The whole path as text',
  textHint:
    'Everything that a path holds (JSON): add, remove or reorder parts here. Faults are named below while you type.',
  notJson: (why: string) => `This is no JSON yet: ${why}`,
  faults: (n: number) =>
    n === 0
      ? 'The path is sound and can be published.'
      : `${count(n, 'fault', 'faults')} to mend before it can be published:`,
  meansTitle: 'What the practice does not have',
  means: {
    skill: (code: string) => `Nobody in use has the skill "${code}".`,
    kit: (code: string) => `No clinic has the set of instruments "${code}".`,
    centre: (code: string) => `No laboratory has the work centre "${code}".`,
  },
  publish: (version: number) => `Publish as version ${String(version)}`,
  giveUp: 'Give up what I typed',
};

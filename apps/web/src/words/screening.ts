import type { ScreeningFindingView } from '@archwright/contracts';

/** Words of what stands out. */
export const screeningWords = {
  title: 'Stands out',
  note: 'For a look, not a verdict: nothing waits for it, and an unusual value may be right.',
  atStage: 'Beside other values',
  kind: {
    value: 'one value',
    drift: 'a changed level',
    share: 'cases that went back',
  } satisfies Record<ScreeningFindingView['kind'], string>,
  foundOn: (when: string) => `found ${when}`,
  onlyYou: 'shown to you alone',
  seen: 'Seen',
  markSeen: (about: string) => `Mark as seen: ${about}`,
  openCase: (number: string, patient: string) => `${number} · ${patient}`,
};

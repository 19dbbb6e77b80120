import type { ScreeningFindingView } from '@archwright/contracts';

export const messages = {
  screening: {
    title: 'Stands out',
    note: 'For a look, not a verdict: nothing waits for it, and an unusual value may be right.',
    atStage: 'Beside other values',
    kind: {
      value: 'one value',
      drift: 'a changed level',
      share: 'cases that went back',
    } satisfies Record<ScreeningFindingView['kind'], string>,
    found: '{kind} · found {when}',
    foundForYou: '{kind} · found {when} · shown to you alone',
    onlyYou: 'shown to you alone',
    seen: 'Seen',
    markSeen: 'Mark as seen: {about}',
    openCase: '{number} · {patient}',
  },
};

import type { messages as english } from '../en/screening.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  screening: {
    title: 'Fällt auf',
    note: 'Zum Ansehen, kein Urteil: Nichts wartet darauf, und ein ungewöhnlicher Wert kann richtig sein.',
    atStage: 'Neben anderen Werten',
    kind: { value: 'ein Wert', drift: 'ein verändertes Niveau', share: 'Fälle, die zurückgingen' },
    found: '{kind} · gefunden {when}',
    foundForYou: '{kind} · gefunden {when} · nur Ihnen gezeigt',
    onlyYou: 'nur Ihnen gezeigt',
    seen: 'Gesehen',
    markSeen: 'Als gesehen kennzeichnen: {about}',
    openCase: '{number} · {patient}',
  },
};

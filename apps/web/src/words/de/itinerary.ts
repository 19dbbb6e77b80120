import type { messages as english } from '../en/itinerary.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  itinerary: {
    title: 'Termine von {patient}',
    sentence: '{n, plural, one {# Termin steht} other {# Termine stehen}} noch bevor, Fall {number}.',
    loading: 'die Termine',
    back: 'Zurück zum Fall',
    print: 'Drucken',
    calendar: 'Kalenderdatei',
    send: { mail: 'Noch einmal mailen', call: 'Auf die Anrufliste' },
    sent: { mail: 'Die E-Mail geht in wenigen Sekunden hinaus.', call: 'Es steht auf der Anrufliste.' },
    none: 'Kein Termin steht bevor. Planen Sie den Fall; seine Termine erscheinen dann hier.',
    provisional: 'noch nicht fest',
    columns: { when: 'Wann', what: 'Wofür', where: 'Wo' },
  },
};

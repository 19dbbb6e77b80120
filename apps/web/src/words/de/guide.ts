import type { messages as english } from '../en/guide.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  guide: {
    label: 'Erste Aufgabe',
    step: 'Erste Aufgabe, Schritt {step} von {steps}:',
    hide: 'Erste Aufgabe ausblenden',
  },
  desk: {
    call: 'Eine Patientin ruft an. Drücken Sie /, tippen Sie alma und dann Enter.',
    openCase: 'Wählen Sie „Fall eröffnen“ neben ihrem Namen.',
    choosePath: 'Wählen Sie einen Behandlungsweg für den Oberkiefer; der Unterkiefer folgt. Suchen Sie dann Zeiten.',
    offers:
      'Vergleichen Sie die Angebote, merken Sie eines vor, solange sie am Telefon ist, und bestätigen Sie alle Termine.',
    booked:
      'Alle Termine und die Laborarbeit dazwischen sind gebucht. Verschieben Sie probeweise einen: Nichts ändert sich, bevor Sie gesehen haben, was sich ändern würde.',
  },
  bench: {
    work: 'Nehmen Sie die erste Arbeit eines Tages: Beginnen Sie sie und schließen Sie sie ab, oder fragen Sie die Praxis etwas.',
    ofCase:
      'Alle Arbeit eines Falls mit dem Auftrag der Praxis. Gehen Sie zurück zum Labor oder weiter zu den Sendungen.',
    parcels: 'Was hinausgeht, geht in einer Sendung und wird Stück für Stück geprüft, wo es ankommt.',
  },
  chair: {
    board: 'Öffnen Sie einen Termin. Hat der Tag keinen, sehen Sie einen späteren an.',
    stage: 'Geben Sie eine Messung ein und sehen Sie ihr Urteil; was das Labor noch braucht, steht daneben.',
    ofCase: 'Der Fall auf einer Linie, vom ersten Termin bis zur letzten Kontrolle.',
  },
  practice: {
    waiting: 'Lesen Sie, was auf eine Person wartet, und öffnen Sie dann den Tag eines Standorts.',
    day: 'Sehen Sie den Tag nach Stuhl oder Behandlung an und öffnen Sie dann einen Fall über seine Nummer.',
    ofCase: 'Folgen Sie dem Fall entlang seiner Linie: was geplant ist, was geschah und wer was getan hat.',
  },
};

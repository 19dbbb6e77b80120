import type { messages as english } from '../en/rules.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  rules: {
    title: 'Erinnerungen, Vormerkungen und Kontrollen',
    link: 'Erinnerungen',
    sentence: 'Änderungen gelten ab der nächsten Buchung; Erinnerungen, die schon warten, behalten ihre Zeit.',
    loading: 'die Regeln',
    reminders: 'Erinnerungen',
    holds: 'Vormerkungen, Kontrollen und Auffälligkeiten',
    own: 'Eine eigene Zeile am Ende jeder Erinnerung',
    ownHint: 'Kein Wort über die Behandlung: Andere könnten die Nachricht sehen.',
    samples: 'Was Patienten bekommen',
    samplesHint: 'Nach dem gesicherten Stand, an einen erfundenen Patienten.',
    fields: {
      mail: 'Per E-Mail: Stunden vor dem Termin, durch Kommas getrennt',
      phone: 'Per Telefon: Stunden vor dem Termin, durch Kommas getrennt',
      quietFrom: 'Nichts wird verschickt von',
      quietTo: 'bis',
      phoneHoldMinutes: 'Minuten, die ein Angebot während des Telefonats vorgemerkt bleibt',
      provisionalHoldHours: 'Stunden, die eine vorläufige Vormerkung bleibt',
      recallMonths: 'Monate zwischen Kontrollen; leer: wie im Behandlungsweg',
      valuesPerFalseAlarm: 'Auf so viele gewöhnliche Werte kommt ein zufälliger Hinweis',
    },
    languages: { en: 'Englisch', de: 'Deutsch', ar: 'Arabisch' },
    need: {
      mail: 'Geben Sie bis zu sechs verschiedene Zahlen von 0.5 bis 720 ein, etwa 48, 4. Leer: keine E-Mails.',
      phone: 'Geben Sie bis zu sechs verschiedene Zahlen von 0.5 bis 720 ein, etwa 24. Leer: keine Anrufe.',
      quietFrom: 'Geben Sie eine Uhrzeit wie 20:00 ein.',
      quietTo: 'Geben Sie eine Uhrzeit wie 08:00 ein.',
      phoneHoldMinutes: 'Geben Sie ganze Minuten von 1 bis 240 ein.',
      provisionalHoldHours: 'Geben Sie Stunden von 0,25 bis 720 ein.',
      recallMonths: 'Geben Sie ganze Monate von 1 bis 60 ein oder nichts.',
      valuesPerFalseAlarm: 'Geben Sie eine ganze Zahl von 100 bis 100000 ein.',
      en: 'Geben Sie höchstens 300 Zeichen ein.',
      de: 'Geben Sie höchstens 300 Zeichen ein.',
      ar: 'Geben Sie höchstens 300 Zeichen ein.',
    },
    save: 'Sichern',
    saved: 'Gesichert.',
  },
};

import type { messages as english } from '../en/users.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  users: {
    title: 'Personen und was sie dürfen',
    link: 'Zugänge',
    sentence:
      '{active, plural, one {# Person darf} other {# Personen dürfen}} sich anmelden{ended, plural, =0 {.} one {; # Zugang ist beendet.} other {; # Zugänge sind beendet.}}',
    loading: 'die Zugänge',
    back: 'Alle Personen',
    columns: { name: 'Name', signIn: 'Anmeldename', role: 'Aufgabe', where: 'Wo', seen: 'Zuletzt gesehen' },
    account: '{signInName}, {role}',
    add: 'Einer Person einen Zugang geben',
    ended: 'beendet',
    nowhere: 'nirgends',
    notSignedIn: 'nicht angemeldet',
    fields: {
      name: 'Name',
      signInName: 'Anmeldename',
      role: 'Aufgabe',
      mail: 'E-Mail-Adresse, wenn es eine gibt',
      clinicIds: 'Standorte',
      laboratoryIds: 'Labore',
      practitionerId: 'Wessen Kalender',
      password: 'Erstes Passwort',
    },
    choose: 'Wählen',
    passwordHint: 'Mindestens 15 Zeichen. Übergeben Sie es persönlich; wer es bekommt, setzt danach ein eigenes.',
    suggest: 'Eines vorschlagen',
    save: 'Sichern',
    give: 'Zugang geben',
    given:
      '{signInName} meldet sich mit dem Passwort {password} an. Übergeben Sie es jetzt: Es wird nicht noch einmal gezeigt.',
    need: {
      name: 'Geben Sie einen Namen mit höchstens 120 Zeichen ein.',
      signInName: 'Geben Sie 3 bis 200 Zeichen ohne Leerzeichen ein, etwa eine E-Mail-Adresse.',
      mail: 'Geben Sie eine Adresse wie name@example.org ein oder lassen Sie das Feld leer.',
      practitionerId: 'Wählen Sie, um wessen Kalender es geht.',
      password: 'Geben Sie mindestens 15 Zeichen ein.',
    },
    lessEnds: 'Wer weniger darf als vorher, wird abgemeldet.',
    end: 'Zugang beenden',
    endThen: 'Alle Sitzungen dieser Person enden jetzt. Was sie getan hat, bleibt in den Akten.',
    letIn: 'Diese Person wieder einlassen',
    letInThen: 'Die Person meldet sich mit ihrem bisherigen Passwort an.',
    reset: 'Neues Passwort setzen',
    resetThen: 'Alle Sitzungen dieser Person enden jetzt.',
    confirm: 'Ja, so tun',
    own: {
      title: 'Ihr Passwort',
      sentence: 'Nach der Änderung werden Sie überall abgemeldet und melden sich mit dem neuen an.',
      current: 'Jetziges Passwort',
      next: 'Neues Passwort',
      save: 'Ändern',
      currentMissing: 'Geben Sie das Passwort ein, mit dem Sie sich angemeldet haben.',
    },
  },
};

import type { messages as english } from '../en/frame.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  frame: {
    name: 'Archwright',
    skip: 'Zur Arbeit springen',
    language: 'Sprache',
    places: { desk: 'Empfang', bench: 'Labor', chair: 'Stuhl', practice: 'Praxis' },
    placesLabel: 'Arbeitsplätze',
    find: 'Name, Fall, Geburtsdatum oder Tag',
    findCase: 'Fallnummer suchen',
    findKey: 'Mit / suchen',
    caughtMail: 'Abgefangene Post',
    password: 'Passwort',
    signOut: 'Abmelden',
    appearance: { auto: 'Farben: wie das System', light: 'Farben: hell', dark: 'Farben: dunkel' },
    roles: {
      'front-desk': 'Empfang',
      lab: 'Labor',
      clinician: 'Behandlung',
      manager: 'Leitung',
      administrator: 'Verwaltung',
    },
    loading: 'Wird geholt: {what} …',
    again: 'Noch einmal versuchen',
    accepted: 'Angenommen',
    offline:
      'Keine Verbindung. Was Sie sehen, wurde früher geholt; was Sie eingeben, bleibt hier und lässt sich sichern, sobald die Verbindung wieder da ist.',
    lineDown:
      'Der Dienst antwortet im Augenblick nicht. Was Sie sehen, kann überholt sein; was Sie eingeben, bleibt hier. Es wird laufend neu versucht.',
    unreachable:
      'Der Server ist nicht zu erreichen. Nichts ging verloren: Ihre Eingaben sind noch hier. Versuchen Sie es gleich noch einmal.',
    badAnswer:
      'Server und Seite verstehen sich nicht ({detail}). Laden Sie die Seite neu; bleibt es dabei, sagen Sie es der Stelle, die den Dienst betreut.',
    unexpected: 'Auf dieser Seite ging etwas schief. Laden Sie sie neu; Gesichertes ist nicht verloren.',
    conflictTitle: 'Jemand anders hat inzwischen etwas gesichert.',
    conflictBody: 'Der neueste Stand lässt sich laden, mit Ihren Eingaben darüber oder an ihrer Stelle.',
    keepMine: 'Laden, meine Eingaben behalten',
    takeTheirs: 'Laden, meine Eingaben verwerfen',
    changedMeanwhile: 'Gerade von jemand anderem geändert; dies ist der neueste Stand.',
    seen: 'Gesehen',
    clashBody: 'Beide Fassungen stehen hier. Nichts wird gesichert, bevor Sie wählen.',
    clashField: 'Feld',
    clashMine: 'Ihre Eingabe',
    clashTheirs: 'Was gesichert wurde',
    clashEmpty: 'nichts',
    clashKeepMine: 'Meine Eingabe behalten',
    clashTakeTheirs: 'Das Gesicherte nehmen',
    notFoundTitle: 'Hier ist nichts',
    notFound:
      'Diese Seite gibt es nicht, oder sie gehört jemand anderem. Die Suche oben findet Patienten, Fälle und Tage.',
    crashTitle: 'Diese Seite ließ sich nicht zeichnen',
    home: 'Zur ersten Seite',
    today: 'Heute',
    earlier: 'Früher',
    later: 'Später',
    day: 'Tag',
    cancel: 'Jetzt nicht',
    codes: {
      'request.precondition-required':
        'Die Seite ist hinter dem Server zurück. Laden Sie sie neu und versuchen Sie es noch einmal.',
    },
  },
  decision: {
    about: 'Entscheiden: {what}',
    reason: 'Grund',
    note: 'Bemerkung, wenn es etwas zu sagen gibt',
    reasonMissing: 'Geben Sie einen Grund mit höchstens 500 Zeichen an.',
    save: 'So entscheiden',
    saveOf: 'So entscheiden: {choice}, {about}',
    outrun: 'Jemand anders hat inzwischen etwas gesichert.',
    newest: 'Was Sie jetzt sehen, ist der neueste Stand; Ihre Eingaben sind erhalten.',
  },
  signIn: {
    title: 'Anmelden',
    sentence: 'Fälle, geplant vom ersten Termin bis zum letzten.',
    again:
      'Sie wurden nach einiger Zeit abgemeldet. Melden Sie sich an, um dort weiterzumachen, wo Sie waren; keine Eingabe ist verloren.',
    name: 'Anmeldename',
    password: 'Passwort',
    showPassword: 'Passwort zeigen',
    enter: 'Anmelden',
    nameMissing: 'Geben Sie Ihren Anmeldenamen ein.',
    passwordMissing: 'Geben Sie Ihr Passwort ein.',
    wrong: 'Name und Passwort passen nicht zusammen. Prüfen Sie beide; beim Passwort zählt Groß- und Kleinschreibung.',
    tooMany: 'Zu viele Versuche. Warten Sie eine Minute und versuchen Sie es dann noch einmal.',
    demo: 'Nur zum Ausprobieren? Die Zugänge der Vorführung stehen dort, wo der Server gestartet wurde.',
  },
  caughtMail: {
    title: 'Abgefangene Post',
    sentence:
      'Die Vorführung verschickt nichts: Was an Patienten und Kollegen gegangen wäre, steht hier, das Neueste zuoberst.',
    loading: 'die Post',
    none: 'Noch wurde nichts verschickt. Bestätigen Sie Termine eines Patienten, der Erinnerungen per E-Mail zugestimmt hat; die Terminübersicht erscheint hier nach wenigen Sekunden.',
    to: 'an {address}',
    calendar: 'Der Kalendereintrag darin',
  },
  find: {
    title: 'Suchen',
    start:
      'Geben Sie einen Namen ein, eine Fallnummer wie 27-0147, ein Geburtsdatum wie 04/03/1949 (Tag zuerst) oder einen Tag wie 5 Jan.',
    results: 'Was zu „{q}“ passt',
    goToDay: 'Der Tag {day}',
    patients: 'Patienten',
    cases: 'Fälle',
    nothing:
      'Nichts und niemand passt zu „{q}“. Versuchen Sie den Anfang des Familiennamens oder des Vornamens, ein Geburtsdatum oder den Anfang der Fallnummer.',
    addPatient: 'Neuen Patienten anlegen',
    openCase: 'Fall eröffnen',
    openCaseFor: 'Fall für {name} eröffnen',
    born: 'geboren',
  },
};

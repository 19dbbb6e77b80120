import type { messages as english } from '../en/practice.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  practice: {
    sentence: '{parts}.',
    clinics: '{n, plural, one {# Standort} other {# Standorte}}',
    chairs: '{n, plural, one {# Stuhl} other {# Stühle}}',
    clinicians: '{n, plural, one {# behandelnde Person} other {# behandelnde Personen}}',
    laboratories: '{n, plural, one {# Labor} other {# Labore}}',
    paths: '{n, plural, one {# Behandlungsweg} other {# Behandlungswege}}',
    centre: '{name} ({places, plural, one {# Platz} other {# Plätze}})',
    clinician: '{name}: {skills}',
    waiting: '{n, plural, =0 {Nichts wartet} one {# Sache wartet} other {# Sachen warten}} auf eine Person.',
    loading: 'was wartet',
    places: 'Seiten der Praxis',
    today: 'Was wartet',
    alertsTitle: 'Wartet auf eine Entscheidung',
    clinicsTitle: 'Standorte',
    laboratoriesTitle: 'Labore',
    pathsTitle: 'Behandlungswege für neue Fälle',
    clinicColumns: { name: 'Standort', zone: 'Zeitzone', chairs: 'Stühle', clinicians: 'Wer behandelt, und was' },
    laboratoryColumns: { name: 'Labor', zone: 'Zeitzone', workCentres: 'Arbeitsbereiche' },
    pathColumns: { title: 'Behandlungsweg', arches: 'Kiefer', visits: 'Termine mit Kontrollen', version: 'Fassung' },
    seeDay: 'Der Tag: {clinic}',
    seeLoad: 'Auslastung und Arbeit: {laboratory}',
  },
};

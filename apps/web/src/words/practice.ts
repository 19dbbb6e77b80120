import { count } from './plural.js';

/** Words of the practice as a whole. */
export const practiceWords = {
  sentence: (parts: string) => `${parts}.`,
  clinics: (n: number) => count(n, 'clinic', 'clinics'),
  chairs: (n: number) => count(n, 'chair', 'chairs'),
  clinicians: (n: number) => count(n, 'clinician', 'clinicians'),
  laboratories: (n: number) => count(n, 'laboratory', 'laboratories'),
  paths: (n: number) => count(n, 'treatment path', 'treatment paths'),
  centre: (name: string, places: number) => `${name} (${count(places, 'place', 'places')})`,
  waiting: (n: number) =>
    n === 0 ? 'Nothing waits for a person.' : `${count(n, 'matter waits', 'matters wait')} for a person.`,
  loading: 'what waits',
  places: 'Screens of the practice',
  today: 'What waits',
  alertsTitle: 'Waiting for a decision',
  clinicsTitle: 'Clinics',
  laboratoriesTitle: 'Laboratories',
  pathsTitle: 'Treatment paths for new cases',
  clinicColumns: { name: 'Clinic', zone: 'Time zone', chairs: 'Chairs', clinicians: 'Clinicians and what they do' },
  laboratoryColumns: { name: 'Laboratory', zone: 'Time zone', workCentres: 'Work centres' },
  pathColumns: { title: 'Path', arches: 'Arches', visits: 'Visits, checks included', version: 'Version' },
  seeDay: (clinic: string) => `The day at ${clinic}`,
  seeLoad: (laboratory: string) => `Load and work of ${laboratory}`,
};

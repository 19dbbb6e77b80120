import type { PracticeView } from '@archwright/contracts';
import { practiceWords as words } from '../words/practice.js';
import { enumerated, listed, spelled } from '../words/plural.js';
import { archWords } from '../words/line.js';

const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

/** What the practice consists of, in one sentence. */
function practiceSentence({ clinics, laboratories, paths }: PracticeView): string {
  const clinicians = new Set(clinics.flatMap((clinic) => clinic.clinicians.map(({ id }) => id))).size;
  return words.sentence(
    listed([
      words.clinics(clinics.length),
      words.chairs(total(clinics.map(({ chairs }) => chairs.length))),
      words.clinicians(clinicians),
      words.laboratories(laboratories.length),
      words.paths(paths.length),
    ]),
  );
}

/**
 * The same after what waits.
 *
 * @param waiting how many matters wait for a person; undefined while that is not known
 */
export const waitingSentence = (practice: PracticeView, waiting: number | undefined): string =>
  waiting === undefined ? practiceSentence(practice) : `${words.waiting(waiting)} ${practiceSentence(practice)}`;

export interface ClinicRow {
  id: string;
  name: string;
  zone: string;
  chairs: string;
  clinicians: string[];
}

export const clinicRows = ({ clinics }: PracticeView): ClinicRow[] =>
  clinics.map(({ id, name, zone, chairs, clinicians }) => ({
    id,
    name,
    zone,
    chairs: enumerated(chairs.map(({ label }) => label)),
    clinicians: clinicians.map((one) => words.clinician(one.name, enumerated(one.skills.map(spelled)))),
  }));

export interface LaboratoryRow {
  id: string;
  name: string;
  zone: string;
  workCentres: string;
}

export const laboratoryRows = ({ laboratories }: PracticeView): LaboratoryRow[] =>
  laboratories.map(({ id, name, zone, workCentres }) => ({
    id,
    name,
    zone,
    workCentres: enumerated(workCentres.map((centre) => words.centre(centre.name, centre.places))),
  }));

export interface PathRow {
  id: string;
  title: string;
  arches: string;
  visits: number;
  version: number;
}

/** Versions that new cases may be opened on. */
export const pathRows = ({ paths }: PracticeView): PathRow[] =>
  paths.map(({ versionId, title, arches, visits, version }) => ({
    id: versionId,
    title,
    arches: archWords(arches),
    visits,
    version,
  }));

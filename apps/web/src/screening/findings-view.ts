import type { ScreeningFindingView } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { screeningWords as words } from '../words/screening.js';

export interface FindingRow {
  finding: ScreeningFindingView;
  caseId: string | null;
  /** The case and its patient, or whose values they are. */
  about: string;
  /** What kind of thing, and when it was found. */
  small: string;
  sentence: string;
}

/** Findings as a list shows them. */
export function findingRows(findings: readonly ScreeningFindingView[], zone: string, today: string): FindingRow[] {
  return findings.map((finding) => {
    const {
      caseId,
      caseNumber,
      patientName,
      clinicName,
      laboratoryName,
      workCentreName,
      deviceName,
      comparedWith,
      kind,
      foundAt,
    } = finding;
    const found = comparedWith === 'own-series' ? words.foundForYou : words.found;
    return {
      finding,
      caseId,
      about:
        caseNumber === null
          ? (placeOf([workCentreName, laboratoryName]) ?? placeOf([deviceName, clinicName]) ?? words.onlyYou)
          : words.openCase(caseNumber, patientName ?? ''),
      small: found(words.kind[kind], dateAndTime(foundAt, zone, today)),
      sentence: finding.sentence,
    };
  });
}

/** A bench with its laboratory, a device with its clinic; null for neither. */
function placeOf(names: readonly (string | null)[]): string | null {
  const known = names.filter((name) => name !== null);
  return known.length === 0 ? null : known.join(', ');
}

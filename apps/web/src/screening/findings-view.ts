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
    const { caseId, caseNumber, patientName, clinicName, laboratoryName, comparedWith, kind, foundAt } = finding;
    const found = comparedWith === 'own-series' ? words.foundForYou : words.found;
    return {
      finding,
      caseId,
      about:
        caseNumber === null
          ? (laboratoryName ?? clinicName ?? words.onlyYou)
          : words.openCase(caseNumber, patientName ?? ''),
      small: found(words.kind[kind], dateAndTime(foundAt, zone, today)),
      sentence: finding.sentence,
    };
  });
}

import type { MaterialLotView, RecordMaterialLot } from '@archwright/contracts';
import { shortDate } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { caseWords } from '../words/case.js';
import { archWords } from '../words/line.js';
import { lotWords as words } from '../words/lots.js';

export interface LotRow {
  id: string;
  caseId: string;
  caseNumber: string;
  caseState: string;
  patientName: string;
  phone: string | null;
  what: string;
  lot: string;
  expires: string;
  recorded: string;
}

/** Entries of a lot in the order of their cases, so that each patient's stand together and is called once. */
export const lotRows = (lots: readonly MaterialLotView[], zone: string, today: string): LotRow[] =>
  [...lots]
    .sort((one, other) => one.caseNumber.localeCompare(other.caseNumber))
    .map((lot) => ({
      id: lot.id,
      caseId: lot.caseId,
      caseNumber: lot.caseNumber,
      caseState: caseWords.states[lot.caseState],
      patientName: lot.patientName,
      phone: lot.phone,
      lot: lot.lot,
      what: lot.arches.length > 0 ? words.of(lot.material, archWords(lot.arches)) : lot.material,
      expires: lot.expiresOn === null ? words.noExpiry : shortDate(lot.expiresOn, today),
      recorded: words.recorded(shortDate(localDateOf(Date.parse(lot.recordedAt), zone), today), lot.recordedBy),
    }));

export const casesOf = (rows: readonly LotRow[]): number => new Set(rows.map(({ caseId }) => caseId)).size;

export interface LotDraft {
  material: string;
  lot: string;
  /** Empty where the maker prints none. */
  expiresOn: string;
}

interface LotTyped {
  /** Null while something is missing. */
  body: RecordMaterialLot | null;
  wrong: Partial<Record<keyof LotDraft, string>>;
}

export function toLot(draft: LotDraft): LotTyped {
  const material = draft.material.trim();
  const lot = draft.lot.trim();
  const wrong = {
    ...(material === '' ? { material: words.used.materialMissing } : {}),
    ...(lot === '' ? { lot: words.need } : {}),
  };
  return { body: material === '' || lot === '' ? null : { material, lot, expiresOn: draft.expiresOn || null }, wrong };
}

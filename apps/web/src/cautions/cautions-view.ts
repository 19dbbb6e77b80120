import { recordCaution, type CautionView, type RecordCaution } from '@archwright/contracts';
import { shortDate } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { cautionWords as words } from '../words/cautions.js';

export interface CautionDraft {
  kind: string;
  material: string;
  note: string;
}

export const emptyCaution: CautionDraft = { kind: '', material: '', note: '' };

/** What would be sent, or what is still missing, by field. A caution without a kind of its own must say what it is. */
export function readCaution({
  kind,
  material,
  note,
}: CautionDraft): { body: RecordCaution } | { errors: CautionErrors } {
  const said = note.trim() === '' ? null : note.trim();
  const parsed = recordCaution.safeParse(
    kind === 'material-allergy' ? { kind, material, note: said } : { kind, note: said },
  );
  const isNamed = !(kind === 'material-allergy' && material === 'another') || said !== null;
  if (parsed.success && isNamed) return { body: parsed.data };
  if (kind === '') return { errors: { kind: words.need.kind } };
  if (kind === 'material-allergy' && material === '') return { errors: { material: words.need.material } };
  return { errors: { note: words.need.note } };
}

export type CautionErrors = Partial<Record<keyof CautionDraft, string>>;

export interface CautionRow {
  id: string;
  version: number;
  text: string;
  recorded: string;
  /** Null while it is in force. */
  ended: string | null;
}

/** As the server lists them: in force first, then the latest. */
export const cautionRows = (items: readonly CautionView[], zone: string, today: string): CautionRow[] => {
  const on = (instant: string): string => shortDate(localDateOf(Date.parse(instant), zone), today);
  return items.map(({ id, version, text, recordedBy, recordedAt, endedAt, endReason }) => ({
    id,
    version,
    text,
    recorded: words.recorded(recordedBy, on(recordedAt)),
    ended: endedAt === null ? null : words.endedOn(on(endedAt), endReason ?? ''),
  }));
};

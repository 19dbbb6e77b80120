import type { Arch, StageView } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { lineWords } from '../words/line.js';
import { languageName, spelled } from '../words/plural.js';

type Field = StageView['fields'][number];
type Side = Field['sides'][number];

/** One box to fill in: a field may ask for several readings, for each arch, side or region. */
export interface Entry {
  key: string;
  label: string;
  arch: Arch | null;
  side: Side | null;
  region: string | null;
}

export interface FieldEntry {
  code: string;
  name: string;
  group: Field['group'];
  required: boolean;
  kind: Field['kind'];
  unit: string;
  hint: string;
  choices: Field['choices'];
  method: {
    key: string;
    stored: string;
    question: string;
    options: { value: string; label: string }[];
    required: boolean;
  }[];
  caution: string | null;
  source: string;
  entries: Entry[];
}

const orNone = <T>(list: readonly T[]): (T | null)[] => (list.length > 0 ? [...list] : [null]);

function entriesOf(field: Field): Entry[] {
  const repeats = Math.max(1, field.readings);
  return orNone(field.arches).flatMap((arch) =>
    orNone(field.sides).flatMap((side) =>
      orNone(field.regions).flatMap((region) =>
        Array.from({ length: repeats }, (_, index) => ({
          key: [field.code, arch ?? '', side ?? '', region ?? '', String(index)].join('|'),
          label: [
            arch ? lineWords.arch[arch] : '',
            side ? stageWords.side[side] : '',
            region ? spelled(region) : '',
            stageWords.reading(index + 1, repeats),
          ]
            .filter(Boolean)
            .join(', '),
          arch,
          side,
          region,
        })),
      ),
    ),
  );
}

/** Fields as boxes in the order in which they are measured. */
export const captureFields = (view: StageView): FieldEntry[] =>
  view.fields.map((field) => ({
    code: field.code,
    name: field.name,
    group: field.group,
    required: field.required,
    kind: field.kind,
    unit: field.unit ?? '',
    hint: [
      field.usual ? stageWords.usual(field.usual.min, field.usual.max, field.unit ?? '').trim() : '',
      ...takenEarlier(view, field),
    ]
      .filter(Boolean)
      .join(' · '),
    choices: field.choices,
    method: field.method.map((question) => ({
      key: question.key,
      stored: `${field.code}|method|${question.key}`,
      question: question.question,
      options: question.options.map((option) => ({
        value: option,
        label: question.key === 'language' ? languageName(option) : spelled(option),
      })),
      required: question.required,
    })),
    caution: field.caution,
    source: field.source,
    entries: entriesOf(field),
  }));

/** What earlier visits measured of it, in words. */
const takenEarlier = ({ earlier }: StageView, { code, unit, choices }: Field): string[] =>
  earlier
    .filter((reading) => reading.code === code)
    .map(({ value, stage }) => {
      const said = choices.find((choice) => choice.code === value)?.label ?? String(value);
      return stageWords.earlier(said, unit ?? '', stage);
    });

/** Fields that a visit may fill in when it helps, by what is measured together, in the order of the catalogue. */
export function groupsOf(fields: readonly FieldEntry[]): { group: Field['group']; fields: FieldEntry[] }[] {
  const groups = [...new Set(fields.map(({ group }) => group))];
  return groups.map((group) => ({ group, fields: fields.filter((field) => field.group === group) }));
}

/** Boxes of one subject: repeated readings of the same thing, which are saved and replaced together. */
export function subjectsOf({ entries }: FieldEntry): Entry[][] {
  const subjects = new Map<string, Entry[]>();
  for (const entry of entries) {
    const subject = [entry.arch, entry.side, entry.region].join('|');
    subjects.set(subject, [...(subjects.get(subject) ?? []), entry]);
  }
  return [...subjects.values()];
}

/** Landmarks between which the stage measures lengths, for records that name their own. */
export function landmarkOptions(view: StageView): { value: string; label: string }[] {
  const options = view.fields.flatMap((field) =>
    field.method.filter((one) => one.key === 'landmarks').flatMap((one) => one.options),
  );
  return [...new Set(options)].map((option) => ({ value: option, label: spelled(option) }));
}

import type { GateRequirement, PathGate, PathLoop, StepSegment, TimeSpan, TreatmentPath } from '@archwright/protocol';
import { delivered } from '../words/delivered.js';
import { editorWords as words } from '../words/path-editor.js';
import { apart, spelled } from '../words/plural.js';
import { cautionChoices } from './choices.js';
import { guardedName, requirementObject } from './gate-choices.js';
import { captureName } from './measured.js';
import { partName, workName } from './path-parts.js';
import { spanWords } from './paths-view.js';

type Say = (path: TreatmentPath, code: string) => string;

const among =
  (texts: Readonly<Record<string, string>>): Say =>
  (_, code) =>
    texts[code] ?? code;

/** Codes by the field in which they stand. */
const SAID: Readonly<Record<string, Say>> = {
  milestone: among(words.milestones),
  pointOfNoReturn: among(words.noReturn),
  batch: among(words.batches),
  outward: among(words.outward),
  firmness: among(words.firmness),
  arches: among(words.arches),
  skills: (_, code) => spelled(code),
  kits: (_, code) => spelled(code),
  workCentre: (_, code) => spelled(code),
  cautions: (_, code) => cautionChoices.find(({ value }) => value === code)?.label ?? code,
  captures: (_, code) => captureName(code),
  before: workName,
  after: workName,
  from: workName,
  to: workName,
  steps: workName,
  visits: workName,
  foundAt: workName,
  madeAt: (path, code) => (code === 'before-case' ? words.beforeCase : workName(path, code)),
  discards: (path, code) => partName(path, { kind: 'object', code }),
  objects: (path, code) => partName(path, { kind: 'object', code }),
  otherwise: (path, code) => partName(path, { kind: 'loop', code }),
  loops: (path, code) => partName(path, { kind: 'loop', code }),
  gates: (path, code) => partName(path, { kind: 'gate', code }),
  lags: (path, code) => partName(path, { kind: 'lag', code }),
  labPhases: (path, code) => partName(path, { kind: 'phase', code }),
};

/** What stands in a field of a path, in words. */
export function valueWords(path: TreatmentPath, at: readonly string[], value: unknown): string {
  const field = at.at(-1) ?? '';
  if (value === undefined || value === null) return words.nothing;
  if (typeof value === 'boolean') return value ? words.yes : words.no;
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return SAID[field]?.(path, value) ?? value;
  if (Array.isArray(value)) {
    return value.length === 0 ? words.nothing : apart(value.map((each: unknown) => valueWords(path, at, each)));
  }
  return typeof value === 'object' ? objectWords(path, at, value) : '';
}

function objectWords(path: TreatmentPath, at: readonly string[], value: object): string {
  const field = at.at(-1);
  if (field === 'remedy') return remedyWords(path, value as PathLoop['remedy']);
  if (field === 'requires') return requirementWords(path, value as GateRequirement);
  if (field === 'segments') return segmentWords(value as StepSegment);
  if (field === 'before') return guardedName(path, value as PathGate['before']);
  if ('firmness' in value && 'amount' in value) return limitWords(value as TimeSpan);
  if ('title' in value && typeof value.title === 'string') return delivered(value.title);
  if ('trigger' in value && typeof value.trigger === 'string') return delivered(value.trigger);
  if ('text' in value && typeof value.text === 'string') return delivered(value.text);
  if (!('code' in value) || typeof value.code !== 'string') return '';
  const { code } = value;
  const part = partName(path, { kind: 'phase', code });
  const list = at.at(-2) ?? '';
  return list === 'labPhases' ? part : ((SAID[list] ?? SAID[field ?? ''])?.(path, code) ?? code);
}

const limitWords = (span: TimeSpan): string => words.span(spanWords(span), words.firmness[span.firmness]);

const segmentWords = ({ kind, minutes }: StepSegment): string =>
  words.asked(words.segments[kind], words.minutesLong(minutes));

const requirementWords = (path: TreatmentPath, requirement: GateRequirement): string =>
  words.asked(words.requirementKinds[requirement.kind], requirementObject(path, requirement));

function remedyWords(path: TreatmentPath, remedy: PathLoop['remedy']): string {
  const said = words.remedies[remedy.kind];
  if (remedy.kind === 'return') return words.asked(said, workName(path, remedy.to));
  if (remedy.kind !== 'repeat-in-visit') return said;
  return words.asked(said, words.tries(remedy.tries, words.minutesLong(remedy.minutesEach)));
}

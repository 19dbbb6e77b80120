import type { SetupEntry, SetupKind, SetupPreview, SetupRecord, SetupView } from '@archwright/contracts';
import { dateAndTime, shortDate } from '../time/wording.js';
import { codesInWords, setupWords as words } from '../words/setup.js';
import { enumerated } from '../words/plural.js';
import { timeWords } from '../words/time.js';
import { timeInWords } from './rule-words.js';

export interface SetupRow {
  readonly id: string;
  readonly name: string;
  readonly isRetired: boolean;
  readonly place: string;
  readonly about: string;
  readonly hours: readonly string[];
}

/** What a row says beside its name. */
type Column = 'place' | 'about' | 'hours';

export interface SetupGroup {
  readonly kind: SetupKind;
  readonly title: string;
  readonly rows: readonly SetupRow[];
  /** Those in which any row says something. */
  readonly columns: readonly Column[];
}

/** Kinds in the order of the screen. */
const ORDER: readonly SetupKind[] = [
  'clinic',
  'person',
  'chair',
  'kit',
  'laboratory',
  'work-centre',
  'courier',
  'device',
  'closure',
];

export function setupGroups(setup: SetupView): SetupGroup[] {
  const nameOf = namesOf(setup);
  return ORDER.map((kind) => {
    const rows = setup.entries
      .filter(({ record }) => record.kind === kind)
      .map((entry) => ({
        id: entry.id,
        name: nameOf(entry.id),
        isRetired: entry.isRetired,
        place: enumerated(placesOf(entry.record).map(nameOf)),
        ...aboutOf(entry.record, setup.today),
      }));
    const columns = COLUMNS.filter((column) => rows.some((row) => row[column].length > 0));
    return { kind, title: words.groups[kind], rows, columns };
  });
}

const COLUMNS: readonly Column[] = ['place', 'about', 'hours'];

export function setupSentence({ entries }: SetupView): string {
  const inUse = (kind: SetupKind) =>
    entries.filter(({ record, isRetired }) => record.kind === kind && !isRetired).length;
  return words.sentence(inUse('clinic'), inUse('person'), entries.filter(({ isRetired }) => isRetired).length);
}

/** Name of a part by its id, as a person would say it. */
export function namesOf({ entries, benchPlaces }: SetupView): (id: string) => string {
  const names = new Map(entries.map(({ id, record }) => [id, ownName(record)]));
  for (const { id, label } of benchPlaces) names.set(id, label);
  const nameOf = (id: string): string => {
    const entry = entries.find((each) => each.id === id);
    if (entry?.record.kind === 'closure') return entry.record.reason;
    return names.get(id) ?? '';
  };
  return nameOf;
}

function ownName(record: SetupRecord): string {
  if ('label' in record) return record.label;
  return 'name' in record ? record.name : record.reason;
}

function placesOf(record: SetupRecord): string[] {
  switch (record.kind) {
    case 'chair':
    case 'kit':
    case 'device':
      return [record.clinicId];
    case 'person':
      return record.workplaces.map(({ clinicId }) => clinicId);
    case 'work-centre':
      return [record.laboratoryId];
    case 'courier':
      return [record.clinicId, record.laboratoryId];
    case 'closure':
      return [record.of.id];
    default:
      return [];
  }
}

function aboutOf(record: SetupRecord, today: string): Pick<SetupRow, 'about' | 'hours'> {
  switch (record.kind) {
    case 'clinic':
      return { about: record.zone, hours: spans(record.hours, words.never) };
    case 'laboratory':
      return {
        about: words.laboratoryAbout(record.zone, record.cutOffLocal),
        hours: spans(record.hours, words.never),
      };
    case 'chair':
      return { about: record.wheelchairRoom ? words.fields.wheelchairRoom : '', hours: [words.always] };
    case 'kit':
      return { about: codesInWords([record.code]), hours: [words.always] };
    case 'person':
      return {
        about: personAbout(record),
        hours: spans(
          record.workplaces.flatMap(({ hours }) => hours),
          words.never,
        ),
      };
    case 'work-centre':
      return { about: words.placesOf(record.places), hours: spans(record.hours, words.always) };
    case 'courier':
      return { about: '', hours: runsInWords(record) };
    case 'device':
      return { about: words.measures[record.measures], hours: [] };
    case 'closure':
      return { about: '', hours: [closureWords(record, today)] };
  }
}

function spans(times: readonly Parameters<typeof timeInWords>[0][], none: string): string[] {
  return times.length === 0 ? [none] : [...new Set(times.map((time) => timeInWords(time)))];
}

function personAbout({ role, skills }: Extract<SetupRecord, { kind: 'person' }>): string {
  return skills.length === 0 ? words.roles[role] : words.personAbout(words.roles[role], codesInWords(skills));
}

function runsInWords({ toLab, toClinic }: Extract<SetupRecord, { kind: 'courier' }>): string[] {
  if (toLab.length + toClinic.length === 0) return [words.never];
  return [
    ...toLab.map((time) => words.toLab(timeInWords(time, 'within'))),
    ...toClinic.map((time) => words.toClinic(timeInWords(time, 'within'))),
  ];
}

function closureWords(
  { fromOn, lastOn, fromLocal, untilLocal }: Extract<SetupRecord, { kind: 'closure' }>,
  today: string,
): string {
  const at = (date: string, time: string | null): string =>
    time === null ? shortDate(date, today) : timeWords.dateAndTime(shortDate(date, today), time);
  const from = at(fromOn, fromLocal);
  const until = fromOn === lastOn && untilLocal !== null ? untilLocal : at(lastOn, untilLocal);
  return from === until ? from : words.closed(from, until);
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

/** Parts in use that a record can stand on, to choose from. */
export function optionsOf(setup: SetupView, kinds: readonly SetupKind[]): Option[] {
  const nameOf = namesOf(setup);
  return setup.entries
    .filter(({ record, isRetired }) => kinds.includes(record.kind) && !isRetired)
    .map(({ id, record }) => {
      const at = enumerated(placesOf(record).map(nameOf));
      return { value: id, label: at === '' ? nameOf(id) : words.placed(nameOf(id), at) };
    });
}

/** Whatever can be closed by itself, to choose from. */
export function closableParts(setup: SetupView): Option[] {
  const benchPlaces = setup.benchPlaces.filter(({ isRetired }) => !isRetired);
  return [
    ...optionsOf(setup, ['clinic', 'person', 'chair', 'kit', 'laboratory', 'work-centre']),
    ...benchPlaces.map(({ id, label }) => ({ value: id, label })),
  ];
}

/** What a closure calls the kind of a part; a clinic where nothing is chosen yet. */
export function closedKindOf(
  { entries, benchPlaces }: SetupView,
  id: string,
): 'clinic' | 'laboratory' | 'work-centre' | 'resource' {
  if (benchPlaces.some((place) => place.id === id)) return 'resource';
  const kind = entries.find((each) => each.id === id)?.record.kind ?? 'clinic';
  return kind === 'clinic' || kind === 'laboratory' || kind === 'work-centre' ? kind : 'resource';
}

export interface PreviewView {
  readonly sentence: string;
  readonly settled: string | null;
  readonly rows: readonly { id: string; when: string; what: string; who: string; caseId: string | null; why: string }[];
}

export function previewView({ looked, stranded, settled }: SetupPreview, today: string): PreviewView {
  return {
    sentence: stranded.length === 0 ? words.nothing(looked) : words.touched(stranded.length, looked),
    settled: settled > 0 ? words.settled(settled) : null,
    rows: stranded.map(({ kind, startsAt, zone, caseNumber, caseId, patientName, why }, index) => ({
      id: `${startsAt} ${String(index)}`,
      when: dateAndTime(startsAt, zone, today),
      what: words.strandedKinds[kind],
      who: patientName === null ? caseNumber : words.caseOf(caseNumber, patientName),
      caseId,
      why,
    })),
  };
}

/** Zone by whose clock the times of a draft are meant. */
export function zoneOfDraft(setup: SetupView, draft: Readonly<Record<string, unknown>>): string {
  if (typeof draft.zone === 'string' && draft.zone !== '') return draft.zone;
  const standsOn = [draft.clinicId, draft.laboratoryId];
  const ground = setup.entries.find(({ id, record }) => standsOn.includes(id) && 'zone' in record)?.record;
  const first = ground ?? setup.entries.find(({ record }) => 'zone' in record)?.record;
  return first !== undefined && 'zone' in first ? first.zone : 'UTC';
}

/** Stands in the address in place of an id while a record is added. */
export const NEW_RECORD = 'new';

/** The kind of a record to add, from the address; a clinic when it names none. */
export function kindOfSearch(kind: string | undefined): SetupKind {
  return ORDER.find((each) => each === kind) ?? 'clinic';
}

/** What else can be done with a part besides changing it; null for what others stand on. */
export function otherChange({ id, isRetired, record }: SetupEntry): OtherChange | null {
  if (record.kind === 'closure') return { do: 'drop', id };
  const retires = ['chair', 'kit', 'person', 'courier', 'device'].includes(record.kind);
  if (!retires) return null;
  return { do: isRetired ? 'return' : 'retire', id };
}

interface OtherChange {
  readonly do: 'retire' | 'return' | 'drop';
  readonly id: string;
}

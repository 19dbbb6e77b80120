import type { ObjectDeed, ObjectView, ParcelView, ReconcileParcel, SessionView } from '@archwright/contracts';
import type { Choice } from '../look/decision-form.js';
import type { Tone } from '../look/marks.js';
import { dateAndTime } from '../time/wording.js';
import { objectWords, parcelWords as words } from '../words/parcels.js';

type Viewer = Pick<SessionView, 'role' | 'clinicIds' | 'laboratoryIds'>;

/** What may be done with a parcel where this person works. */
type Turn = 'send' | 'receive' | 'check' | null;

export interface ParcelRow {
  id: string;
  version: number;
  ends: string;
  state: string;
  tone: Tone;
  sentence: string;
  turn: Turn;
  caution: string;
  objects: { id: string; caseNumber: string; code: string; name: string; detail: string }[];
}

const WORKS: readonly SessionView['role'][] = ['front-desk', 'clinician', 'lab'];

function turnOf({ direction, state, clinicId, laboratoryId }: ParcelView, viewer: Viewer): Turn {
  const { role, clinicIds, laboratoryIds } = viewer;
  if (!WORKS.includes(role)) return null;
  const isSender = (direction === 'to-lab') === (role !== 'lab');
  const isHere = role === 'lab' ? laboratoryIds.includes(laboratoryId) : clinicIds.includes(clinicId);
  if (!isHere) return null;
  if (state === 'packed') return isSender ? 'send' : null;
  if (isSender) return null;
  return state === 'handed-over' ? 'receive' : state === 'received' ? 'check' : null;
}

const FIRST: Record<NonNullable<Turn> | 'none', number> = { check: 0, receive: 1, send: 2, none: 3 };

/** What waits for this person on top: first what is to be checked, then what is to be received, then what is to leave. */
export const parcelRows = (parcels: readonly ParcelView[], viewer: Viewer): ParcelRow[] =>
  parcels
    .map((parcel): ParcelRow => {
      const turn = turnOf(parcel, viewer);
      return {
        id: parcel.id,
        version: parcel.version,
        ends: words.ends[parcel.direction](parcel.clinicName, parcel.laboratoryName),
        state: words.state[parcel.state],
        tone: turn === 'check' || turn === 'receive' ? 'caution' : 'plain',
        sentence: parcel.sentence,
        turn,
        caution: words.caution(parcel.caution.text, parcel.caution.source),
        objects: parcel.objects.map(({ id, caseNumber, code, kind, declared }) => ({
          id,
          caseNumber,
          code,
          name: words.object(caseNumber, code),
          detail: declared ? words.declared(objectWords.kind[kind], declared) : objectWords.kind[kind],
        })),
      };
    })
    .sort((one, other) => FIRST[one.turn ?? 'none'] - FIRST[other.turn ?? 'none']);

export type Deed = Exclude<ObjectDeed['action'], 'move' | 'set-use-by' | 'take-back' | 'find' | 'forward'>;

export interface ObjectRow {
  id: string;
  version: number;
  name: string;
  code: string;
  /** What it is, and where it lies if that is known. */
  kind: string;
  state: string;
  tone: Tone;
  declared: string | null;
  /** Why it may not be used or leave, the weightier first. */
  against: string | null;
  mayDeclare: boolean;
  deeds: Choice<string>[];
  caution: string;
}

const DEEDS: Partial<Record<ObjectView['state'], readonly Deed[]>> = {
  expected: ['book-in'],
  'in-use': ['quarantine', 'give-to-patient', 'declare-lost', 'discard'],
  quarantined: ['release', 'declare-lost', 'discard'],
};
const FORWARD = 'forward ';

/** Things that this person's clinics or laboratories have in hand, with what may be done with each. */
export const objectRows = (
  objects: readonly ObjectView[],
  viewer: Viewer,
  clock: { zone: string; today: string },
  clinics: readonly { id: string; name: string }[],
): ObjectRow[] => {
  const isLab = viewer.role === 'lab';
  const isHere = ({ holder, clinicId, laboratoryId }: ObjectView): boolean =>
    isLab
      ? holder !== 'clinic' && viewer.laboratoryIds.includes(laboratoryId ?? '')
      : holder !== 'laboratory' && viewer.clinicIds.includes(clinicId ?? '');
  return objects.filter(isHere).map((object) => ({
    id: object.id,
    version: object.version,
    name: words.object(object.caseNumber, object.code),
    code: object.code,
    kind: object.place
      ? objectWords.kindAt(objectWords.kind[object.kind], object.place)
      : objectWords.kind[object.kind],
    state: objectWords.state[object.state],
    tone: object.state === 'quarantined' ? 'stop' : 'plain',
    declared:
      object.disinfection &&
      objectWords.declared(
        object.disinfection.agent,
        dateAndTime(object.disinfection.at, clock.zone, clock.today),
        object.disinfection.by,
      ),
    against: object.notToBeUsed ?? object.notToBePacked,
    mayDeclare: WORKS.includes(viewer.role) && (object.state === 'in-use' || object.state === 'quarantined'),
    deeds: WORKS.includes(viewer.role) ? deedsOf(object, isLab, clinics) : [],
    caution: words.caution(object.caution.text, object.caution.source),
  }));
};

function deedsOf(
  { state, clinicId }: ObjectView,
  isLab: boolean,
  clinics: readonly { id: string; name: string }[],
): Choice<string>[] {
  const own = (DEEDS[state] ?? []).filter((key) => !(isLab && key === 'give-to-patient'));
  const others = isLab || state !== 'in-use' ? [] : clinics.filter(({ id }) => id !== clinicId);
  return [
    ...own.map((key) => ({ key, ...objectWords.deed[key] })),
    ...others.map(({ id, name }) => ({ key: `${FORWARD}${id}`, ...objectWords.forward(name) })),
  ];
}

/** What is sent for a deed that was chosen. */
export function deedBody(key: string, reason: string): ObjectDeed {
  if (key.startsWith(FORWARD)) return { action: 'forward', clinicId: key.slice(FORWARD.length) };
  switch (key) {
    case 'book-in':
      return { action: key, place: null };
    case 'give-to-patient':
      return { action: key };
    case 'quarantine':
    case 'release':
    case 'declare-lost':
    case 'discard':
      return { action: key, reason };
    default:
      throw new Error(`Nothing is called "${key}" here.`);
  }
}

export interface FindingDraft {
  caseNumber: string;
  code: string;
  found: string;
  place: string;
  note: string;
}

/** What was found, or at which objects it is not said yet. */
export function readFindings(drafts: readonly FindingDraft[]): { body: ReconcileParcel } | { missing: number[] } {
  const findings: ReconcileParcel['findings'] = [];
  const missing: number[] = [];
  drafts.forEach(({ caseNumber, code, found, place, note }, index) => {
    if (found === 'present' || found === 'missing' || found === 'damaged' || found === 'undeclared') {
      const [where, said] = [place.trim(), note.trim()];
      findings.push({ caseNumber, code, found, ...(where && { place: where }), ...(said && { note: said }) });
    } else missing.push(index);
  });
  return missing.length > 0 ? { missing } : { body: { findings } };
}

import type { CaseChain } from '@archwright/protocol';

/** What an event's body may hold; every event fills in a few of these. */
interface EventBody {
  readonly stage?: string;
  readonly from?: string;
  readonly to?: string;
  readonly reason?: string | null;
  /** Said by the writer of the event itself. */
  readonly sentence?: string;
  readonly booked?: readonly string[];
  readonly moved?: readonly string[];
  readonly cancelled?: readonly string[];
  readonly provisional?: readonly string[];
  readonly visits?: readonly unknown[];
  readonly steps?: readonly string[];
  /** A laboratory step. */
  readonly code?: string;
  readonly pointOfNoReturn?: string;
  readonly passed?: number;
  readonly cautions?: number;
  readonly failed?: number;
  readonly changed?: number;
  readonly outcome?: string;
  readonly recheck?: readonly string[];
}

interface Naming {
  readonly titleOf: (code: string | undefined) => string;
}

type Wording = (body: EventBody, naming: Naming) => string;

const WORDINGS: Readonly<Record<string, Wording>> = {
  'case-opened': () => 'The case was opened.',
  'enquiry-opened': () => 'An enquiry was opened: only the examination is planned.',
  'path-decided': () => 'The treatment was decided; the whole chain is planned from now on.',
  'consent-recorded': () => 'Consent, approval and the questions asked before treatment were dated.',
  'state-changed': ({ from, to, reason, cancelled, recheck }) =>
    sentences([
      `The case was ${from ?? ''} and is now ${plain(to ?? '')}${because(reason)}`,
      count(cancelled, 'visit was cancelled', 'visits were cancelled'),
      recheck === undefined || recheck.length === 0
        ? null
        : `To be looked at again before it goes on: ${recheck.map(plain).join(', ')}`,
    ]),
  'offer-held': () => 'The times of an offer are held.',
  'hold-released': () => 'Held times were given back.',
  'hold-expired': () => 'Held times ran out and were given back.',
  'plan-confirmed': ({ booked, provisional }) =>
    sentences([
      count(booked, 'visit was booked', 'visits were booked'),
      count(provisional, 'visit is kept provisionally', 'visits are kept provisionally'),
    ]),
  'plan-applied': ({ booked, moved, cancelled, reason }) =>
    sentences([
      `The plan was changed${because(reason)}`,
      count(booked, 'visit is new', 'visits are new'),
      count(moved, 'visit moved', 'visits moved'),
      count(cancelled, 'visit was cancelled', 'visits were cancelled'),
    ]),
  'visits-announced': ({ visits }) =>
    sentences([count(visits, 'visit was announced to the patient', 'visits were announced to the patient')]),
  'call-made': ({ outcome }) => `The patient was called: ${plain(outcome ?? 'no outcome noted')}.`,
  'stage-captured': ({ stage }, { titleOf }) => `Recorded: ${titleOf(stage)}.`,
  'stage-checked': ({ stage, passed, cautions, failed }, { titleOf }) =>
    `Checked: ${titleOf(stage)}; ${String(passed ?? 0)} passed, ${String(cautions ?? 0)} with caution, ${String(failed ?? 0)} failed.`,
  'photograph-kept': ({ stage }, { titleOf }) => `A photograph was kept: ${titleOf(stage)}.`,
  'photograph-removed': ({ stage, reason }, { titleOf }) =>
    `A photograph of ${titleOf(stage)} was taken away${because(reason)}.`,
  'teeth-chosen': ({ stage }, { titleOf }) => `Teeth were chosen at ${titleOf(stage)}.`,
  'stage-rechecked': ({ stage, changed }, { titleOf }) =>
    `Judged again by changed rules or ranges: ${titleOf(stage)}; ${String(changed ?? 0)} findings say something else now.`,
  'stage-completed': ({ stage }, { titleOf }) => `Passed: ${titleOf(stage)}.`,
  'stage-repeated': ({ stage }, { titleOf }) => `To be repeated: ${titleOf(stage)}.`,
  'gate-overridden': ({ stage }, { titleOf }) => `A gate of ${titleOf(stage)} was overridden, with a reason on record.`,
  'prescription-signed': ({ stage }, { titleOf }) => `The work order after ${titleOf(stage)} was signed.`,
  'lab-work-opened': ({ steps }, { titleOf }) => `The laboratory may start: ${(steps ?? []).map(titleOf).join(', ')}.`,
  'lab-work-moved': ({ steps }, { titleOf }) =>
    `The laboratory moved work, and no visit with it: ${(steps ?? []).map(titleOf).join(', ')}.`,
  'lab-question-answered': () => 'A question of the laboratory was answered.',
  'lab-question-escalated': () => 'A question of the laboratory was not answered in time; the clinic was told.',
  'point-of-no-return-paused': ({ stage, pointOfNoReturn }, { titleOf }) =>
    `A late finding at ${titleOf(stage)} pauses ${titleOf(pointOfNoReturn)}.`,
  'pause-yielded': ({ stage }, { titleOf }) => `A later check of ${titleOf(stage)} passed; the pause is over.`,
  'late-finding-answered': ({ stage }, { titleOf }) => `The late finding at ${titleOf(stage)} was answered.`,
};

/** One line of a case's history in words. A kind without a wording of its own is told by its name. */
export function eventSentence(kind: string, body: object, chain: CaseChain): string {
  const titles = new Map([...chain.stages, ...chain.steps].map(({ code, title }) => [code, title]));
  const titleOf = (code: string | undefined) => `"${titles.get(code ?? '') ?? code ?? ''}"`;
  const known = body as EventBody;
  const wording = WORDINGS[kind];
  if (wording !== undefined) return wording(known, { titleOf });
  if (known.sentence !== undefined) return known.sentence;
  const about = known.stage ?? known.code;
  return `${capitalised(plain(kind))}${about === undefined ? '' : `: ${titleOf(about)}`}.`;
}

function count(list: readonly unknown[] | undefined, one: string, many: string): string | null {
  if (list === undefined || list.length === 0) return null;
  return `${String(list.length)} ${list.length === 1 ? one : many}`;
}

const sentences = (parts: readonly (string | null)[]): string =>
  parts.flatMap((part) => (part === null ? [] : /[.!?]$/.test(part) ? part : `${part}.`)).join(' ');
const because = (reason: string | null | undefined): string => (reason == null ? '' : `: ${reason}`);
const plain = (words: string): string => words.replaceAll('-', ' ');
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

import { TOLD, type Filling, type RecordCall, type Told, type ToldCode } from '@archwright/contracts';
import type { CaseChain, CaseState, ResumeCheck } from '@archwright/protocol';
import { told } from '../tell.js';

/** What an event's body may hold; every event fills in a few of these. */
interface EventBody {
  readonly stage?: string;
  readonly from?: CaseState;
  readonly to?: CaseState;
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
  /** The stage that a remake goes back to. */
  readonly returnTo?: string;
  readonly passed?: number;
  readonly cautions?: number;
  readonly failed?: number;
  readonly changed?: number;
  readonly outcome?: RecordCall['outcome'];
  readonly recheck?: readonly ResumeCheck[];
}

type Values = Readonly<Record<string, Filling | null>>;
type TitleOf = (code: string | undefined) => { readonly title: string };

/** What the sentences of some kinds are filled with; the others name the stage or step that they are about. */
const FILLED: Readonly<Record<string, (body: EventBody, titleOf: TitleOf) => Values>> = {
  'state-changed': ({ from, to, reason, cancelled, recheck }) => ({
    from: from === undefined ? null : listed([told(`state-${from}`)]),
    to: to === undefined ? null : listed([told(`state-${to}`)]),
    because: ended(reason),
    cancelled: cancelled?.length ?? 0,
    recheck: listed((recheck ?? []).map((each) => told(`recheck-${each}`))),
  }),
  'plan-confirmed': ({ booked, provisional }) => ({
    booked: booked?.length ?? 0,
    provisional: provisional?.length ?? 0,
  }),
  'plan-applied': ({ booked, moved, cancelled, reason }) => ({
    because: ended(reason),
    booked: booked?.length ?? 0,
    moved: moved?.length ?? 0,
    cancelled: cancelled?.length ?? 0,
  }),
  'visits-announced': ({ visits }) => ({ n: visits?.length ?? 0 }),
  'call-made': ({ outcome }) => ({ outcome: outcome === undefined ? null : listed([told(`outcome-${outcome}`)]) }),
  'stage-checked': ({ stage, passed, cautions, failed }, titleOf) => ({
    title: titleOf(stage),
    passed: passed ?? 0,
    cautions: cautions ?? 0,
    failed: failed ?? 0,
  }),
  'photograph-removed': ({ stage, reason }, titleOf) => ({ title: titleOf(stage), because: ended(reason) }),
  'stage-rechecked': ({ stage, changed }, titleOf) => ({ title: titleOf(stage), changed: changed ?? 0 }),
  'lab-work-opened': ({ steps }, titleOf) => ({ steps: namesOf(steps, titleOf) }),
  'lab-work-moved': ({ steps }, titleOf) => ({ steps: namesOf(steps, titleOf) }),
  'point-of-no-return-paused': ({ stage, pointOfNoReturn }, titleOf) => ({
    title: titleOf(stage),
    pauses: titleOf(pointOfNoReturn),
  }),
  'remake-alert-raised': ({ stage, returnTo }, titleOf) => ({ title: titleOf(stage), back: titleOf(returnTo) }),
};

/** One line of a case's history. A kind without a sentence here says its own, else it is told by its name. */
export function eventTold(kind: string, body: object, chain: CaseChain): Told {
  const titles = new Map([...chain.stages, ...chain.steps].map(({ code, title }) => [code, title]));
  const titleOf: TitleOf = (code) => ({ title: titles.get(code ?? '') ?? code ?? '' });
  const known = body as EventBody;
  const about = known.stage ?? known.code;
  const code = `history-${kind}`;
  if (isTold(code)) return told(code, FILLED[kind]?.(known, titleOf) ?? { title: titleOf(about) });
  if (known.sentence !== undefined) return told('as-written', { text: known.sentence });
  return told('history-of-its-own', {
    kind: capitalised(kind.replaceAll('-', ' ')),
    title: about === undefined ? null : titleOf(about),
  });
}

const isTold = (code: string): code is ToldCode => code in TOLD;

type Parts = Extract<Filling, { list: unknown }>['list'];

const listed = (list: Parts): Filling | null => (list.length === 0 ? null : { list });

const namesOf = (codes: readonly string[] | undefined, titleOf: TitleOf): Filling | null =>
  listed((codes ?? []).map((code) => told('named', { title: titleOf(code) })));

/** What somebody wrote, with the full stop that it may lack. */
const ended = (reason: string | null | undefined): string | null =>
  reason == null ? null : /[.!?]$/.test(reason) ? reason : `${reason}.`;

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

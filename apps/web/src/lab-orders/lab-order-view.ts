import type { LabOrderAction, LabOrderView, PracticeView, Role, SendLabOrder } from '@archwright/contracts';
import { typedMinute } from '../change-visit/change-visit-view.js';
import type { Choice, Given } from '../look/decision-form.js';
import type { MarkShape } from '../look/marks.js';
import { practiceZone } from '../time/practice-zone.js';
import { dateAndTime, timeOfDay } from '../time/wording.js';
import { labOrderWords as words } from '../words/lab-orders.js';
import { archWords } from '../words/line.js';
import { enumerated } from '../words/plural.js';

export type OrderChoice = keyof typeof words.choices;

/** As typed: day and time are empty together, or say when the work is needed. */
export interface OrderDraft {
  laboratoryId: string;
  day: string;
  time: string;
}

interface OrderTyped {
  /** Null while something is wrong. */
  body: SendLabOrder | null;
  wrong: Partial<Record<keyof OrderDraft, string>>;
}

export function toOrder({ laboratoryId, day, time }: OrderDraft, stageId: string, zone: string): OrderTyped {
  const neededBy = typedMinute(day, time, zone);
  const wrong = {
    ...(laboratoryId === '' ? { laboratoryId: words.send.laboratoryMissing } : {}),
    ...(neededBy === null && day + time !== '' ? { time: words.send.timeMissing } : {}),
  };
  if (Object.keys(wrong).length > 0) return { body: null, wrong };
  return { body: { stageId, laboratoryId, ...(neededBy === null ? {} : { neededBy }) }, wrong };
}

/** What on an order asks for a person. */
type Care = keyof typeof words.care;

export interface OrderRow {
  id: string;
  version: number;
  number: string;
  /** Null for the laboratory: the case is the practice's. */
  caseId: string | null;
  about: string;
  neededBy: string;
  work: string;
  /** Who it goes to or comes from, and its dates. */
  facts: string[];
  state: string;
  mark: MarkShape;
  care: string | null;
  declined: string | null;
  values: LabOrderView['values'];
  objects: string;
  choices: Choice<OrderChoice>[];
}

const MARK: Record<LabOrderView['state'], MarkShape> = {
  ordered: 'to-come',
  accepted: 'now',
  declined: 'missed',
  withdrawn: 'missed',
  finished: 'done',
};

/** A laboratory that says nothing for so long is to be called. Project default. */
const UNANSWERED_MS = 86_400_000;

export const isOut = ({ state }: Pick<LabOrderView, 'state'>): boolean => state === 'ordered' || state === 'accepted';

/** What is late or about to be, the gravest first; null for an order that runs as it should. */
export function careOf({ state, sentAt, neededBy, promisedAt }: LabOrderView, nowMs: number): Care | null {
  if (state === 'ordered') {
    if (Date.parse(neededBy) <= nowMs) return 'needed-past';
    return Date.parse(sentAt) + UNANSWERED_MS <= nowMs ? 'unanswered' : null;
  }
  if (state !== 'accepted' || promisedAt === null) return null;
  if (Date.parse(promisedAt) <= nowMs) return 'overdue';
  return Date.parse(promisedAt) > Date.parse(neededBy) ? 'promised-late' : null;
}

/** The wall clock that an order's dates are read by: the laboratory's own at the laboratory, else the practice's. */
export const orderZone = (practice: PracticeView, role: Role): string =>
  (role === 'lab' ? practice.laboratories[0]?.zone : undefined) ?? practiceZone(practice);

interface Reader {
  role: Role;
  zone: string;
  today: string;
  nowMs: number;
}

function orderRow(order: LabOrderView, { role, zone, today, nowMs }: Reader): OrderRow {
  const { id, version, state, caseNumber, caseId, laboratoryName, order: document } = order;
  const at = (instant: string) => dateAndTime(instant, zone, today);
  const care = careOf(order, nowMs);
  return {
    id,
    version,
    number: caseNumber,
    caseId,
    about: words.about(caseNumber),
    neededBy: order.neededBy,
    work: words.work(enumerated(document.steps.map(({ title }) => title)), archWords(document.arches)),
    facts: [
      laboratoryName === null ? words.from(document.practice, document.clinic) : words.to(laboratoryName),
      words.sent(at(order.sentAt)),
      words.needed(at(order.neededBy)),
      ...(order.promisedAt === null ? [] : [words.promised(at(order.promisedAt))]),
    ],
    state: words.states[state],
    mark: care === null ? MARK[state] : 'needs-person',
    care: care === null ? null : words.care[care],
    declined: order.declineReason === null ? null : words.declined(order.declineReason),
    values: order.values,
    objects: document.objects.length === 0 ? words.noObjects : enumerated(document.objects),
    choices: keysFor(order, role, nowMs).map((key) => choiceOf(key, order, { zone, needed: at(order.neededBy) })),
  };
}

/** What this person may answer: the laboratory to what was addressed to it, the practice to what it has sent. */
function keysFor({ state, neededBy, caseId }: LabOrderView, role: Role, nowMs: number): OrderChoice[] {
  if (role === 'lab' && caseId === null) {
    if (state === 'accepted') return ['finish', 'promise', 'decline'];
    if (state !== 'ordered') return [];
    // A date that is over can't be promised.
    return Date.parse(neededBy) > nowMs ? ['accept', 'accept-other', 'decline'] : ['accept-other', 'decline'];
  }
  const maySend = role === 'front-desk' || role === 'clinician';
  return maySend && (state === 'ordered' || state === 'accepted') ? ['withdraw'] : [];
}

function choiceOf(
  key: OrderChoice,
  { neededBy }: LabOrderView,
  { zone, needed }: { zone: string; needed: string },
): Choice<OrderChoice> {
  const { label, then } = words.choices[key];
  const named = { key, label, then: key === 'accept' ? words.acceptThen(needed) : then };
  if (key === 'decline' || key === 'withdraw') return named;
  const date = { label: words.day(timeOfDay(neededBy, zone)), missing: words.dayMissing };
  return { ...named, hasReason: false, ...(key === 'promise' || key === 'accept-other' ? { date } : {}) };
}

/** What to send; null for a day that can't be promised. The time of day is that of the need. */
export function orderAction(
  { key, reason, on }: Given<OrderChoice>,
  { neededBy }: Pick<LabOrderView, 'neededBy'>,
  zone: string,
): LabOrderAction | null {
  const promisedAt = typedMinute(on, timeOfDay(neededBy, zone), zone);
  switch (key) {
    case 'accept':
      return { action: 'accept', promisedAt: neededBy, benchTimes: [] };
    case 'accept-other':
      return promisedAt === null ? null : { action: 'accept', promisedAt, benchTimes: [] };
    case 'promise':
      return promisedAt === null ? null : { action: 'promise', promisedAt };
    case 'finish':
      return { action: 'finish' };
    case 'decline':
    case 'withdraw':
      return { action: key, reason };
  }
}

/** Orders under way, those that need a person and then those needed first leading; and those that are over as they came. */
export function shapeOrders(
  orders: readonly LabOrderView[],
  reader: Reader,
): { out: OrderRow[]; over: OrderRow[]; sentence: string } {
  const needsCare = (order: LabOrderView) => careOf(order, reader.nowMs) !== null;
  const out = orders
    .filter(isOut)
    .sort(
      (one, other) =>
        Number(needsCare(other)) - Number(needsCare(one)) || Date.parse(one.neededBy) - Date.parse(other.neededBy),
    );
  return {
    out: out.map((order) => orderRow(order, reader)),
    over: orders.filter((order) => !isOut(order)).map((order) => orderRow(order, reader)),
    sentence: words.sentence(out.length, out.filter(needsCare).length),
  };
}

import type { LabCaseView, WorkOrder } from '@archwright/contracts';
import { STEP_MARK } from '../bench/step-mark.js';
import { questionLines, type QuestionLines } from '../lab-questions/question-view.js';
import type { MarkShape } from '../look/marks.js';
import { dateAndTime, longDate } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { benchWords, labCaseWords as words } from '../words/bench.js';
import { caseWords } from '../words/case.js';
import { archWords } from '../words/line.js';

type Step = LabCaseView['labSteps'][number];
type Visit = LabCaseView['stages'][number];

/** A visit as a milestone of the work, or a step of it. */
export interface WorkRow {
  key: string;
  kind: 'visit' | 'step';
  what: string;
  detail: string;
  when: string;
  where: string;
  due: string;
  state: string;
  mark: MarkShape;
  /** What the bench has to know before it begins, or why it ended. */
  note: string | null;
  question: QuestionLines | null;
  /** The dispatch list in which it stands; null while it is not planned. */
  list: { lab: string; centre: string; on: string } | null;
}

const VISIT_MARK: Record<Visit['state'], MarkShape> = {
  waiting: 'to-come',
  planned: 'to-come',
  ready: 'to-come',
  'in-progress': 'now',
  passed: 'done',
  repeated: 'done',
  dropped: 'missed',
};

/** Visits in the order of the path, each followed by the work between it and the next. Dropped and discarded stay away. */
export function workRows(view: LabCaseView, today: string): WorkRow[] {
  const at = (instant: string | null): string =>
    instant === null ? words.notPlanned : dateAndTime(instant, view.zone, today);
  const visits = [...view.stages]
    .filter(({ state }) => state !== 'dropped')
    .sort((one, other) => one.position - other.position || one.round - other.round);
  const placed = new Set<string>();
  return visits.flatMap((visit) => {
    const steps = view.labSteps.filter(
      ({ id, state, afterStage, round }) =>
        state !== 'discarded' && afterStage === visit.code && round === visit.round && !placed.has(id),
    );
    for (const { id } of steps) placed.add(id);
    return [visitRow(visit, at), ...steps.map((step) => stepRow(step, view, today, at))];
  });
}

function visitRow(visit: Visit, at: (instant: string | null) => string): WorkRow {
  return {
    key: visit.id,
    kind: 'visit',
    what: visit.title,
    detail: words.visit(visit.round),
    when: at(visit.startsAt),
    where: visitPlace(visit),
    due: '',
    state: caseWords.stage[visit.state],
    mark: VISIT_MARK[visit.state],
    note: null,
    question: null,
    list: null,
  };
}

function stepRow(step: Step, view: LabCaseView, today: string, at: (instant: string | null) => string): WorkRow {
  const { laboratoryId, workCentreId, startsAt, waitsFor, stateReason, question } = step;
  const isPlanned = laboratoryId !== null && workCentreId !== null && startsAt !== null;
  return {
    key: step.id,
    kind: 'step',
    what: step.title,
    detail: words.step(archWords(step.arches), step.handsOnMinutes, step.round),
    when: at(startsAt),
    where: step.placeLabel ?? '',
    due: step.dueBackAt === null ? '' : at(step.dueBackAt),
    state: benchWords.state[step.state],
    mark: question?.answeredAt === null ? 'needs-person' : STEP_MARK[step.state],
    note: noteOf(waitsFor, stateReason),
    question: question === null ? null : questionLines(question, view.zone, today),
    list: isPlanned
      ? { lab: laboratoryId, centre: workCentreId, on: localDateOf(Date.parse(startsAt), view.zone) }
      : null,
  };
}

const visitPlace = ({ clinicName, clinicianName }: Visit): string =>
  clinicName && clinicianName ? words.visitAt(clinicName, clinicianName) : (clinicName ?? clinicianName ?? '');

function noteOf(waitsFor: string | null, stateReason: string | null): string | null {
  if (stateReason !== null) return words.rejectedFor(stateReason);
  return waitsFor === null ? null : words.waitsFor(waitsFor);
}

/** "Upper: …; lower: …", or once for both when they follow one path. */
export function pathWords({ arches }: LabCaseView): string {
  const [first, second] = arches;
  if (first !== undefined && first.pathVersionId === second?.pathVersionId) {
    return words.path(archWords(['upper', 'lower']), first.pathTitle);
  }
  const [one = '', other] = arches.map(({ arch, pathTitle }) => words.path(archWords([arch]), pathTitle));
  return other === undefined ? one : words.paths(one, other);
}

export function progressSentence({ labSteps }: LabCaseView): string {
  const counted = labSteps.filter(({ state }) => state !== 'discarded');
  const finished = counted.filter(({ state }) => state === 'finished').length;
  return words.progress(counted.length, finished);
}

export const deliveryWords = ({ deliveryOn }: LabCaseView, today: string): string =>
  deliveryOn === null ? words.noDelivery : words.delivery(longDate(deliveryOn, today));

export interface OrderSheet {
  id: string;
  title: string;
  signed: string;
  superseded: boolean;
  work: string[];
  values: WorkOrder['values'];
  objects: string[];
}

export const orderSheets = (view: LabCaseView, today: string): OrderSheet[] =>
  view.workOrders.map(({ id, title, round, arches, signedAt, signedBy, superseded, work, values, objects }) => ({
    id,
    title: words.order(title, round, archWords(arches)),
    signed: words.signed(signedBy, dateAndTime(signedAt, view.zone, today)),
    superseded,
    work,
    values,
    objects,
  }));

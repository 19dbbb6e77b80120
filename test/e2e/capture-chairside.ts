import { checkStage, proposeReplan, recheckStages, screenCapture, screenNight, sweep } from '@archwright/casework';
import {
  appointmentView,
  caseView,
  checkStagePayload,
  demoClock,
  dispatchStep,
  recheckStagesPayload,
  replanCasePayload,
  screenCapturePayload,
  screenSeriesPayload,
  stageView,
  type CaseView,
  type CompleteStage,
  type RecordCapture,
  type StageView,
} from '@archwright/contracts';
import { markDispatched, takeDueOutbox } from '@archwright/records';
import { RefusedCall, type ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { completeChecklist, requiredReadings } from '../../apps/cli/src/demo/readings.js';
import { found, type BookingPractice } from './booking-practice.js';

const MINUTE_MS = 60_000;
/** Jobs that the chairside runs itself. */
const RUN_HERE: readonly string[] = ['check-stage', 'screen-capture', 'screen-series', 'recheck-stages', 'replan-case'];

type Stage = CaseView['stages'][number];

/** The clinician's and the bench's work on cases of a practice, at the times that are booked; jobs run from the outbox. */
export class Chairside {
  clinician!: ApiSession;
  bench!: ApiSession;
  desk!: ApiSession;
  /** At or after the service's own clock. */
  now = new Date(0);
  /** When the clock was last moved. */
  private movedTo = new Date(0);

  private constructor(readonly practice: BookingPractice) {}

  static async at(practice: BookingPractice, now: Date): Promise<Chairside> {
    const chairside = new Chairside(practice);
    chairside.now = chairside.movedTo = now;
    await chairside.signIn();
    return chairside;
  }

  /** Sessions end as the clock moves on. */
  private async signIn(): Promise<void> {
    this.clinician = await this.practice.signIn('chair');
    this.bench = await this.practice.signIn('bench');
    this.desk = await this.practice.signIn('desk');
  }

  /** One step may begin when another ends: the clock only ever moves forward. */
  async moveClock(to: Date): Promise<void> {
    if (to <= this.movedTo) return;
    const body = { now: to.toISOString() };
    const { now } = await this.desk.call({ method: 'PUT', path: '/demo/clock', body, answer: demoClock });
    this.now = this.movedTo = new Date(now);
    await this.signIn();
  }

  /** Does what the worker would: takes what is due from the outbox and runs it. Mail is left alone. */
  async runJobs(): Promise<number> {
    // The service's clock runs on while the test works.
    this.now = new Date(this.now.getTime() + MINUTE_MS);
    const due = await this.practice.rows(async (tx) => {
      const rows = await takeDueOutbox(tx, this.now, 500);
      await markDispatched(
        tx,
        rows.map(({ id }) => id),
        this.now,
      );
      return rows.filter(({ kind }) => RUN_HERE.includes(kind));
    });
    const db = await this.practice.rows((tx) => Promise.resolve(tx.dataSource));
    const means = { db, searches: this.practice.searches };
    for (const { kind, payload } of due) {
      if (kind === 'check-stage')
        await this.practice.rows((tx) => checkStage(tx, checkStagePayload.parse(payload), this.now));
      else if (kind === 'screen-capture')
        await this.practice.rows((tx) => screenCapture(tx, screenCapturePayload.parse(payload), this.now));
      else if (kind === 'screen-series')
        await this.practice.rows((tx) => screenNight(tx, screenSeriesPayload.parse(payload), this.now));
      else if (kind === 'recheck-stages') await recheckStages(db, recheckStagesPayload.parse(payload), this.now);
      else await proposeReplan(means, replanCasePayload.parse(payload), this.now);
    }
    return due.length === 0 ? 0 : due.length + (await this.runJobs());
  }

  /** The sweep of a night, as two workers make it, and the jobs that it starts. */
  async night(at: Date): Promise<void> {
    const db = await this.practice.rows((tx) => Promise.resolve(tx.dataSource));
    await sweep(db, this.practice.organisationId, at);
    await sweep(db, this.practice.organisationId, at);
    this.now = new Date(Math.max(this.now.getTime(), at.getTime()));
    await this.runJobs();
  }

  state(caseId: string): Promise<CaseView> {
    return this.clinician.call({ method: 'GET', path: `/cases/${caseId}`, answer: caseView });
  }

  async stage(caseId: string, code: string): Promise<Stage> {
    const { stages } = await this.state(caseId);
    const own = stages.filter((stage) => stage.code === code && !['dropped', 'repeated'].includes(stage.state));
    return found(own.at(-1));
  }

  view(stageId: string): Promise<StageView> {
    return this.clinician.call({ method: 'GET', path: `/stages/${stageId}`, answer: stageView });
  }

  /** The patient arrives and the visit begins, at its booked time. */
  async begin(caseId: string, code: string): Promise<StageView> {
    const { id, startsAt, appointmentId } = await this.stage(caseId, code);
    await this.moveClock(new Date(Date.parse(found(startsAt)) - 5 * MINUTE_MS));
    await this.act(found(appointmentId), 'arrive');
    await this.act(found(appointmentId), 'start');
    return this.view(id);
  }

  async act(appointmentId: string, action: 'arrive' | 'start' | 'finish'): Promise<void> {
    const path = `/appointments/${appointmentId}`;
    const { version } = await this.clinician.call({ method: 'GET', path, answer: appointmentView });
    const body = { action };
    await this.clinician.call({ method: 'POST', path: `${path}/actions`, version, body, answer: appointmentView });
  }

  /** Saves what was captured, without the check. */
  save({ id, version }: StageView, body: Partial<RecordCapture>): Promise<StageView> {
    const path = `/stages/${id}/captures`;
    return this.clinician.call({ method: 'POST', path, version, body, answer: stageView });
  }

  async capture(stage: StageView, body: Partial<RecordCapture>): Promise<StageView> {
    await this.save(stage, body);
    await this.runJobs();
    return this.view(stage.id);
  }

  /** Everything that the stage asks for, as an uneventful visit answers it. */
  async captureAll(stage: StageView, given: Record<string, string | number | boolean> = {}): Promise<StageView> {
    return this.capture(stage, {
      readings: answers(stage, given),
      checklist: completeChecklist(stage),
      otherCentricRelation: stage.fields.some(({ code }) => code === 'occlusal-vertical-dimension')
        ? [{ method: 'bimanual-guidance' }]
        : [],
    });
  }

  async complete({ id }: StageView, outcome: CompleteStage['outcome']): Promise<StageView> {
    const { version } = await this.view(id);
    const path = `/stages/${id}/completion`;
    return this.clinician.call({ method: 'POST', path, version, body: { outcome }, answer: stageView });
  }

  async sign({ id }: StageView): Promise<StageView> {
    const { version } = await this.view(id);
    const disinfection = { agent: 'surface agent, full contact time', at: this.movedTo.toISOString() };
    const path = `/stages/${id}/prescription`;
    return this.clinician.call({ method: 'POST', path, version, body: { disinfection }, answer: stageView });
  }

  override({ id, version }: StageView, gate: string, reason: string): Promise<StageView> {
    const path = `/stages/${id}/overrides`;
    return this.clinician.call({ method: 'POST', path, version, body: { gate, reason }, answer: stageView });
  }

  /** A visit from arrival to the end, with everything recorded and the work order signed. */
  async passVisit(caseId: string, code: string): Promise<StageView> {
    await this.begin(caseId, code);
    return this.passVisitUnderWay(caseId, code);
  }

  async passVisitUnderWay(caseId: string, code: string): Promise<StageView> {
    const checked = await this.captureAll(await this.view((await this.stage(caseId, code)).id));
    const { labSteps } = await this.state(caseId);
    if (labSteps.some(({ afterStage, state }) => afterStage === code && state !== 'discarded'))
      await this.sign(checked);
    const passed = await this.complete(checked, 'passed');
    await this.act(found((await this.stage(caseId, code)).appointmentId), 'finish');
    return passed;
  }

  async consent(caseId: string): Promise<void> {
    const { version } = await this.state(caseId);
    const on = this.now.toISOString().slice(0, 10);
    const body = { consentOn: on, treatmentApprovedOn: on, medicinesAskedOn: on };
    await this.clinician.call({ method: 'PUT', path: `/cases/${caseId}/consent`, version, body, answer: caseView });
  }

  /** The laboratory does every step that follows the visit, at its planned time. */
  async makeLabWork(caseId: string, afterStage: string): Promise<void> {
    const { labSteps } = await this.state(caseId);
    const steps = labSteps
      .filter((step) => step.afterStage === afterStage && (step.state === 'planned' || step.state === 'ready'))
      .sort((a, b) => found(a.startsAt).localeCompare(found(b.startsAt)));
    for (const { id, startsAt, endsAt } of steps) {
      await this.moveClock(new Date(found(startsAt)));
      await this.actOnStep(id, 'start');
      await this.moveClock(new Date(found(endsAt)));
      await this.actOnStep(id, 'finish');
    }
  }

  async actOnStep(id: string, action: 'start' | 'finish'): Promise<void> {
    const path = `/lab/steps/${id}`;
    const { version } = await this.bench.call({ method: 'GET', path, answer: dispatchStep });
    await this.bench.call({ method: 'POST', path: `${path}/actions`, version, body: { action }, answer: dispatchStep });
  }
}

/** Readings of an uneventful visit; a healthy mucosa is grade 0. */
export function answers(stage: StageView, given: Record<string, string | number | boolean> = {}) {
  const isAsked = stage.fields.some(({ code }) => code === 'newton-stomatitis');
  return requiredReadings(stage, { ...(isAsked ? { 'newton-stomatitis': '0' } : {}), ...given });
}

/** The refusal that a call is expected to end in. */
export async function refusal(call: Promise<unknown>): Promise<RefusedCall> {
  try {
    await call;
  } catch (error) {
    if (error instanceof RefusedCall) return error;
    throw error;
  }
  throw new Error('The call was expected to be refused.');
}

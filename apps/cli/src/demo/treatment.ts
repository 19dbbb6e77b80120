import {
  appointmentView,
  caseView,
  dispatchStep,
  stageView,
  type CaseView,
  type RecordCapture,
  type StageView,
} from '@archwright/contracts';
import { setTimeout as pause } from 'node:timers/promises';
import { StoryBroken, must, type Cast } from './cast.js';
import type { Narrator } from './narrator.js';
import { whenInWords } from './narrator.js';
import { completeChecklist, requiredReadings } from './readings.js';

const minute = 60_000;
const shifted = (instant: string, byMs: number): string => new Date(Date.parse(instant) + byMs).toISOString();

/** One case's work in clinic and laboratory, done by the people whose work it is, at the time it is planned for. */
export class Treatment {
  constructor(
    private readonly cast: Cast,
    readonly caseId: string,
    private readonly narrator: Narrator,
  ) {}

  async state(): Promise<CaseView> {
    return this.cast.clinician.call({ method: 'GET', path: `/cases/${this.caseId}`, answer: caseView });
  }

  /** Consent, approval and the questions on medicines, dated at the examination. */
  async consent(): Promise<void> {
    const { stages } = await this.state();
    await this.cast.moveClock(must(stages[0]?.startsAt, 'a first visit'));
    const { version } = await this.state();
    const on = must(stages[0]?.startsAt, 'a first visit').slice(0, 10);
    await this.cast.clinician.call({
      method: 'PUT',
      path: `/cases/${this.caseId}/consent`,
      version,
      body: { consentOn: on, treatmentApprovedOn: on, medicinesAskedOn: on },
      answer: caseView,
    });
  }

  /** The patient arrives and the visit begins, at its booked time, as far as that has not happened yet. */
  async begin(code: string): Promise<StageView> {
    const planned = await this.currentStage(code);
    await this.cast.moveClock(shifted(must(planned.startsAt, `a time for ${code}`), -5 * minute));
    const appointmentId = must(planned.appointmentId, `an appointment for ${code}`);
    if (planned.appointmentState === 'booked') await this.act(appointmentId, 'arrive');
    if (planned.appointmentState === 'booked' || planned.appointmentState === 'arrived')
      await this.act(appointmentId, 'start');
    return this.view(planned.id);
  }

  /** Saves what was captured and waits for the check in the background. */
  async capture(stage: StageView, body: Partial<RecordCapture>): Promise<StageView> {
    await this.cast.clinician.call({
      method: 'POST',
      path: `/stages/${stage.id}/captures`,
      version: stage.version,
      body,
      answer: stageView,
    });
    for (let attempt = 0; attempt < 100; attempt++) {
      const checked = await this.view(stage.id);
      if (!checked.checking) return checked;
      await pause(200);
    }
    throw new StoryBroken(`expected the check of ${stage.code} within 20 seconds`);
  }

  async finish(stage: StageView, outcome: 'passed' | 'repeat'): Promise<void> {
    const { appointmentId } = await this.currentStage(stage.code);
    const fresh = await this.view(stage.id);
    if (fresh.state === 'in-progress') {
      await this.cast.clinician.call({
        method: 'POST',
        path: `/stages/${stage.id}/completion`,
        version: fresh.version,
        body: { outcome },
        answer: stageView,
      });
    }
    await this.act(must(appointmentId, `an appointment for ${stage.code}`), 'finish');
  }

  async sign(stage: StageView): Promise<void> {
    const fresh = await this.view(stage.id);
    await this.cast.clinician.call({
      method: 'POST',
      path: `/stages/${stage.id}/prescription`,
      version: fresh.version,
      body: {
        shade: 'as the earlier denture',
        disinfection: { agent: 'surface agent, full contact time', at: await this.cast.clockNow() },
      },
      answer: stageView,
    });
  }

  /**
   * An uneventful visit: everything asked for is captured, the check passes, the work order is signed. One that was left
   * in the middle is gone on with.
   */
  async completeStage(code: string): Promise<void> {
    const begun = await this.begin(code);
    if (begun.state === 'in-progress' && begun.prescription?.signedAt == null) await this.record(begun);
    await this.finish(begun, 'passed');
    this.narrator.say(`${begun.title}: recorded, checked, passed.`);
  }

  private async record(begun: StageView): Promise<void> {
    const { code } = begun;
    const checked = await this.capture(begun, {
      readings: requiredReadings(begun),
      checklist: completeChecklist(begun),
      otherCentricRelation: begun.fields.some(({ code: field }) => field === 'occlusal-vertical-dimension')
        ? [{ method: 'bimanual-guidance' }]
        : [],
    });
    const failed = checked.verdicts.find(({ verdict }) => verdict === 'fail');
    if (failed !== undefined) throw new StoryBroken(`expected ${code} to pass, but: ${failed.reason}`);
    const { labSteps } = await this.state();
    if (labSteps.some((step) => step.afterStage === code && step.state !== 'discarded')) await this.sign(checked);
  }

  /** The laboratory does every step that follows the visit, at its planned time. */
  async makeLabWork(afterStage: string): Promise<void> {
    const { labSteps } = await this.state();
    const steps = labSteps
      .filter((step) => step.afterStage === afterStage && (step.state === 'planned' || step.state === 'ready'))
      .sort((one, other) => must(one.startsAt, 'a start').localeCompare(must(other.startsAt, 'a start')));
    for (const step of steps) {
      await this.cast.moveClock(must(step.startsAt, 'a start'));
      await this.actOnStep(step.id, 'start');
      await this.cast.moveClock(must(step.endsAt, 'an end'));
      await this.actOnStep(step.id, 'finish');
    }
    const zone = (await this.state()).zone;
    if (steps.length > 0) {
      this.narrator.say(
        `The laboratory finished ${String(steps.length)} steps by ${whenInWords(must(steps.at(-1)?.endsAt, 'an end'), zone)}.`,
      );
    }
  }

  async completeRemaining(): Promise<void> {
    for (let guard = 0; guard < 20; guard++) {
      const next = (await this.state()).stages.find(
        (stage) => stage.startsAt !== null && (stage.state === 'planned' || stage.state === 'ready'),
      );
      if (next === undefined) return;
      await this.completeStage(next.code);
      await this.makeLabWork(next.code);
    }
    throw new StoryBroken('expected the case to come to an end');
  }

  private async currentStage(code: string) {
    const { stages } = await this.state();
    return must(
      stages.filter((stage) => stage.code === code && stage.state !== 'dropped' && stage.state !== 'repeated').at(-1),
      `a stage ${code}`,
    );
  }

  async view(stageId: string): Promise<StageView> {
    return this.cast.clinician.call({ method: 'GET', path: `/stages/${stageId}`, answer: stageView });
  }

  private async act(appointmentId: string, action: 'arrive' | 'start' | 'finish'): Promise<void> {
    const { version } = await this.cast.clinician.call({
      method: 'GET',
      path: `/appointments/${appointmentId}`,
      answer: appointmentView,
    });
    await this.cast.clinician.call({
      method: 'POST',
      path: `/appointments/${appointmentId}/actions`,
      version,
      body: { action },
      answer: appointmentView,
    });
  }

  async actOnStep(stepId: string, action: 'start' | 'finish'): Promise<void> {
    const { version } = await this.cast.bench.call({
      method: 'GET',
      path: `/lab/steps/${stepId}`,
      answer: dispatchStep,
    });
    await this.cast.bench.call({
      method: 'POST',
      path: `/lab/steps/${stepId}/actions`,
      version,
      body: { action },
      answer: dispatchStep,
    });
  }
}

import { alertPage, remakeAlertView, remakeLog, type RecordCapture, type RemakeAlertView } from '@archwright/contracts';
import { Appointment, LabStep, Notice, RemakeAlert, ReplanProposal, Stage } from '@archwright/records';
import { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { NOW, bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';

const LONG_MS = 240_000;
const DIGITAL = { path: 'digital-printed-bases' };

const blunt: RecordCapture['tracings'][number] = {
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  apex: 'none',
  basesMoved: false,
  contact: false,
  pain: false,
};

describe('what has to be made again', () => {
  let practice: BookingPractice;
  let chair: Chairside;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  const alertOf = async (caseId: string, session: ApiSession = chair.desk): Promise<RemakeAlertView> => {
    const { items } = await session.call({ method: 'GET', path: '/remake-alerts', answer: alertPage });
    return found(items.find((item) => item.caseId === caseId));
  };
  const accept = (alert: RemakeAlertView, planHash: string) => {
    const body = { proposalId: found(alert.proposals[0]).id, planHash };
    const path = `/remake-alerts/${alert.id}/acceptance`;
    return chair.desk.call({ method: 'POST', path, version: alert.version, body, answer: remakeAlertView });
  };
  const hashOf = (alert: RemakeAlertView) => found(alert.proposals[0]).planHash;

  /** What was accepted is counted by its cause and origin, and stands behind both counts. */
  async function isInTheLog({ id, caseId, returnToTitle }: RemakeAlertView): Promise<void> {
    const log = (more: string) => {
      const path = `/lab/remakes?fromOn=2027-01-01&untilOn=2027-12-31${more}`;
      return chair.bench.call({ method: 'GET', path, answer: remakeLog });
    };
    const whole = await log('');
    const once = { remakes: 1, byCheck: 1, cases: 1 };
    expect(whole).toMatchObject({ remakes: 1, cases: 1, next: null });
    expect(whole.causes).toEqual([expect.objectContaining({ ...once, key: 'jaw-relation-not-recorded' })]);
    expect(whole.origins).toEqual([{ ...once, key: returnToTitle, title: returnToTitle }]);
    expect(whole.items).toEqual([
      expect.objectContaining({ alertId: id, caseId, foundBy: 'check', originKind: 'visit', origin: returnToTitle }),
    ]);
    expect(
      (await log(`&origin=${encodeURIComponent(returnToTitle)}&cause=jaw-relation-not-recorded`)).items,
    ).toHaveLength(1);
    expect(await log('&cause=looks-refused')).toMatchObject({ items: [], remakes: 1 });
    expect((await refusal(log('&limit=0'))).status).toBe(400);
    const tooLong = chair.bench.call({
      method: 'GET',
      path: '/lab/remakes?fromOn=2025-01-01&untilOn=2027-12-31',
      answer: remakeLog,
    });
    expect((await refusal(tooLong)).status).toBe(400);
  }

  /** The combined visit of a new case, after its examination and base plates. */
  async function atCombinedVisit() {
    const { id: caseId } = await bookedCase({ ...practice, desk: chair.desk }, DIGITAL);
    await chair.begin(caseId, 'D1');
    await chair.consent(caseId);
    await chair.passVisitUnderWay(caseId, 'D1');
    await chair.makeLabWork(caseId, 'D1');
    return { caseId, begun: await chair.begin(caseId, 'D2') };
  }

  it(
    'raises one alert for three failed tracings, proposes the fewest moved visits, and books exactly what was shown',
    async () => {
      const { caseId, begun } = await atCombinedVisit();
      const failed = await chair.capture(begun, { tracings: [blunt, blunt, blunt] });
      expect(failed.verdicts.find(({ action }) => action === 'return-to-stage')?.reason).toContain('3 is the limit');
      const alert = await alertOf(caseId);
      expect(alert).toMatchObject({
        trigger: 'jaw-relation-not-recorded',
        returnToStage: 'D2',
        arches: ['upper', 'lower'],
        discards: ['Maxillomandibular relationship record'],
        state: 'planned',
      });
      const proposal = found(alert.proposals[0]);
      expect(proposal).toMatchObject({ otherCases: 0, movedVisits: proposal.leastMovedVisits });
      for (const other of alert.proposals.slice(1)) {
        expect(other.leastMovedVisits).toBe(proposal.movedVisits);
        expect(other.movedVisits).toBeGreaterThanOrEqual(proposal.movedVisits);
        expect(other.planHash).not.toBe(proposal.planHash);
      }
      const own = found(proposal.ripples[0]);
      expect(own.visits.filter(({ before }) => before === null).map(({ stages }) => stages)).toEqual([['D2']]);

      const undecided = await refusal(chair.complete(failed, 'passed'));
      expect(undecided.status).toBe(409);
      await chair.complete(failed, 'repeat');
      await chair.act(found(await appointmentOf(begun.id)).id, 'finish');
      const planned = await alertOf(caseId);
      expect((await refusal(accept(planned, 'another-hash'))).status).toBe(409);

      const accepted = await accept(planned, hashOf(planned));
      expect(accepted.state).toBe('accepted');
      const { stages } = await chair.state(caseId);
      const goes = stages.filter(({ code }) => code === 'D2');
      expect(goes.map(({ round, state }) => [round, state])).toEqual([
        [1, 'repeated'],
        [2, 'planned'],
      ]);
      for (const visit of own.plan.visits) {
        const booked = stages.find((stage) => visit.stages.includes(stage.code) && stage.state === 'planned');
        expect(booked?.startsAt).toBe(visit.startsAt);
      }
      expect(await overlaps(practice)).toBe(0);
      const again = await refusal(accept(accepted, hashOf(planned)));
      expect(again.status).toBe(409);
      const notices = await practice.rows((tx) => tx.findBy(Notice, { alertId: alert.id }));
      await isInTheLog(accepted);
      expect(new Set(notices.map(({ recipient }) => recipient))).toEqual(new Set(['clinic', 'laboratory']));

      await chair.passVisit(caseId, 'D2');
      await chair.makeLabWork(caseId, 'D2');
    },
    LONG_MS,
  );

  it(
    'takes an alert back when another centric relation record corrects it in the same visit',
    async () => {
      const { caseId, begun } = await atCombinedVisit();
      const failed = await chair.capture(begun, { tracings: [blunt, blunt, blunt] });
      const corrected = await chair.capture(failed, { otherCentricRelation: [{ method: 'bimanual-guidance' }] });
      expect(corrected.verdicts.some(({ action }) => action === 'return-to-stage')).toBe(false);
      expect(await alertOf(caseId)).toMatchObject({ state: 'dismissed' });
      const proposals = await practice.rows((tx) => tx.findBy(ReplanProposal, { state: 'open' }));
      expect(proposals).toEqual([]);

      const body = { caseId, stage: 'D2', trigger: 'clinical-finding', reason: 'The upper record base was dropped.' };
      const path = '/remake-alerts';
      const opened = await chair.clinician.call({ method: 'POST', path, body, answer: remakeAlertView });
      expect(opened).toMatchObject({ state: 'open', returnToStage: 'D2', trigger: 'clinical-finding', proposals: [] });
      expect(
        (await refusal(chair.clinician.call({ method: 'POST', path, body, answer: remakeAlertView }))).status,
      ).toBe(409);
      await chair.runJobs();
      const atBench = await alertOf(caseId, chair.bench);
      expect(atBench).toMatchObject({ patientName: '', reason: 'Found at D2: clinical finding.', state: 'planned' });
      expect(atBench.proposals.flatMap(({ ripples }) => ripples.flatMap(({ calls }) => calls))).toEqual([]);
      expect(JSON.stringify(atBench)).not.toContain('Booking-Example');

      const dismissed = await chair.clinician.call({
        method: 'POST',
        path: `/remake-alerts/${opened.id}/dismissal`,
        version: atBench.version,
        body: { reason: 'It was only scratched.' },
        answer: remakeAlertView,
      });
      expect(dismissed).toMatchObject({ state: 'dismissed', proposals: [] });
    },
    LONG_MS,
  );

  it(
    'voids what was made since the jaw relation when the trial shows it was wrong, and gives the benches back',
    async () => {
      const { caseId } = await caseAtTrial();
      const body = {
        caseId,
        stage: 'D3',
        trigger: 'jaw-relation-wrong-at-trial',
        reason: 'Centric relation differs from the record.',
      };
      await chair.clinician.call({ method: 'POST', path: '/remake-alerts', body, answer: remakeAlertView });
      await chair.runJobs();
      const alert = await alertOf(caseId);
      expect(alert).toMatchObject({ returnToStage: 'D2', state: 'planned' });
      await accept(alert, hashOf(alert));
      const { stages, steps } = await practice.rows(async (tx) => ({
        stages: await tx.find(Stage, { where: { caseId }, order: { position: 'ASC', round: 'ASC' } }),
        steps: await tx.findBy(LabStep, { caseId, afterStage: 'D2' }),
      }));
      const goes = (code: string) => stages.filter((each) => each.code === code).map(({ state }) => state);
      expect(goes('D2')).toEqual(['repeated', 'planned']);
      expect(goes('D3')).toEqual(['repeated', 'planned']);
      expect(steps.filter(({ round }) => round === 1).every(({ state }) => state === 'discarded')).toBe(true);
      expect(steps.filter(({ round }) => round === 2).every(({ state }) => state === 'planned')).toBe(true);
      const [row] = await practice.rows((tx) => tx.findBy(RemakeAlert, { caseId, state: 'accepted' }));
      expect(row?.decidedBy).not.toBeNull();
      expect(await overlaps(practice)).toBe(0);
    },
    LONG_MS,
  );

  async function caseAtTrial() {
    const { caseId } = await atCombinedVisit();
    await chair.passVisitUnderWay(caseId, 'D2');
    await chair.makeLabWork(caseId, 'D2');
    await chair.begin(caseId, 'D3');
    return { caseId };
  }

  const appointmentOf = (stageId: string) =>
    practice.rows((tx) =>
      tx
        .createQueryBuilder(Appointment, 'a')
        .where('a.id IN (SELECT appointment_id FROM appointment_stage WHERE stage_id = :stageId)', { stageId })
        .getOne(),
    );
});

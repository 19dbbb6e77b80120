import { labCaseView, prescriptionPreview, stageBoard, stageView, toothChoiceView } from '@archwright/contracts';
import {
  CaseEvent,
  CheckVerdict,
  CustodyObject,
  FindingPause,
  GateOverride,
  Measurement,
  Prescription,
} from '@archwright/records';
import { checkStage } from '@archwright/casework';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, answers, refusal } from './capture-chairside.js';

const LONG_MS = 180_000;
const WEEKS = { path: 'digital-printed-bases' };

describe('the stage at the chair', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let caseId: string;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    caseId = (await bookedCase(practice, WEEKS)).id;
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  it('refuses readings that a body cannot have, naming the field and what would be accepted', async () => {
    const begun = await chair.begin(caseId, 'D1');
    expect(begun.fields.find(({ code }) => code === 'cawood-howell-class')).toMatchObject({
      required: true,
      arches: ['upper', 'lower'],
    });
    expect(begun.cautions.map(({ code }) => code)).toContain('aspiration');
    const refused = await refusal(
      chair.save(begun, {
        readings: [
          { code: 'VDR', value: 6.8, method: { landmarks: 'subnasale-gnathion' } },
          { code: 'VDR', value: 68 },
          { code: 'newton-stomatitis', value: '0', arch: 'upper' },
        ],
        checklist: { parts: 2 },
      }),
    );
    expect(refused.status).toBe(400);
    expect(refused.problem.errors?.map(({ path }) => path)).toEqual([
      'readings.0.value',
      'readings.1.method.landmarks',
      'checklist.parts',
    ]);
    expect(refused.problem.errors?.[0]?.problem).toContain('68 mm');
    expect(await practice.rows((tx) => tx.count(Measurement))).toBe(0);
  });

  it('asks for If-Match and refuses a capture based on an older version', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D1')).id);
    const path = `/stages/${stage.id}/captures`;
    const bare = await refusal(chair.clinician.call({ method: 'POST', path, body: {}, answer: stageView }));
    expect(bare.status).toBe(428);
    const older = await refusal(chair.save({ ...stage, version: stage.version - 1 }, {}));
    expect(older.status).toBe(412);
  });

  it('says exactly what a gate still lacks, and passes the stage once nothing does', async () => {
    await chair.consent(caseId);
    const begun = await chair.view((await chair.stage(caseId, 'D1')).id);
    const isLeft = ({ code, arch }: { code: string; arch?: string }) =>
      code === 'cawood-howell-class' && arch === 'upper';
    const left = answers(begun).filter(isLeft);
    const old = { code: 'OLD-DENTURE-OVD', value: 59, method: { landmarks: 'subnasale-gnathion' } };
    const partly = await chair.capture(begun, {
      readings: [...answers(begun).filter((reading) => !isLeft(reading)), old],
      checklist: { medicines: true },
    });
    const refused = await refusal(chair.complete(partly, 'passed'));
    expect(refused.status).toBe(409);
    expect(refused.problem.missing).toEqual(['cawood howell class recorded (upper)']);
    expect(partly).toMatchObject({ mayGoOn: false, sentence: 'Missing: cawood howell class recorded (upper).' });

    const whole = await chair.capture(partly, { readings: left });
    expect(whole).toMatchObject({ mayGoOn: true, checking: false });
    expect((await chair.sign(whole)).gates.every(({ open }) => !open)).toBe(true);
    await chair.complete(whole, 'passed');
    const { labSteps, stages } = await chair.state(caseId);
    expect(stages.find(({ code }) => code === 'D1')?.state).toBe('passed');
    const own = labSteps.filter(({ afterStage }) => afterStage === 'D1');
    expect(own.length).toBeGreaterThan(0);
    expect(own.every(({ state }) => state === 'ready')).toBe(true);
    const objects = await practice.rows((tx) => tx.findBy(CustodyObject, { caseId }));
    expect(objects.map(({ kind, arch, holder }) => [kind, arch, holder])).toEqual(
      expect.arrayContaining([
        ['impression', 'upper', 'clinic'],
        ['impression', 'lower', 'clinic'],
      ]),
    );
    await chair.act(found((await chair.stage(caseId, 'D1')).appointmentId), 'finish');
    await chair.makeLabWork(caseId, 'D1');
  });

  it('fails contact in sibilants on stable bases, and lets it be corrected in the chair', async () => {
    const begun = await chair.begin(caseId, 'D2');
    // Measured at the examination, and compared with here.
    expect(begun.earlier).toMatchObject([{ code: 'old-denture-occlusal-vertical-dimension', value: 59, stage: 'D1' }]);
    const offered = begun.fields.filter(({ required }) => !required).map(({ code }) => code);
    expect(offered).toEqual(expect.arrayContaining(['border-thickness', 'buccal-corridor', 'pain-on-closing']));
    const tooHigh = await chair.captureAll(begun, {
      'occlusal-vertical-dimension': 67,
      'sibilant-test': 'contact',
      'base-stability': 'stable',
    });
    const failed = found(tooHigh.verdicts.find(({ rule }) => rule === 'sibilant-contact'));
    expect(failed).toMatchObject({ verdict: 'fail', action: 'correct-in-chair', ruleVersion: '1' });
    expect(tooHigh.derived).toContainEqual(
      expect.objectContaining({ code: 'interocclusal-rest-distance', value: 1, unit: 'mm' }),
    );
    expect(tooHigh.derived).toContainEqual(
      expect.objectContaining({ code: 'change-of-occlusal-vertical-dimension', value: 8 }),
    );
    expect(tooHigh.mayGoOn).toBe(false);

    const readings = answers(tooHigh, { 'occlusal-vertical-dimension': 65, 'sibilant-test': 'no-contact' });
    const relation = [{ method: 'bimanual-guidance' as const }];
    const corrected = await chair.capture(tooHigh, { readings, otherCentricRelation: relation });
    expect(corrected.verdicts.find(({ rule }) => rule === 'sibilant-contact')?.verdict).toBe('pass');
    expect(corrected.mayGoOn).toBe(true);
    expect((await chair.state(caseId)).alerts).toEqual([]);
    const all = await practice.rows((tx) =>
      tx.findBy(CheckVerdict, { stageId: begun.id, rule: 'sibilant-contact/sibilant-test' }),
    );
    expect(all.map(({ verdict, supersededAt }) => [verdict, supersededAt === null]).sort()).toEqual([
      ['fail', false],
      ['pass', true],
    ]);
  });

  it('keeps a choice of teeth with who decided, and hands its words on to the laboratory', async () => {
    const { id } = await chair.stage(caseId, 'D2');
    const path = `/stages/${id}/tooth-choice`;
    const width = { target: 'central-incisor-width', object: 'photograph', valueMm: 0.85 };
    const body = { wish: 'As on the wedding picture.', arrangement: '', shade: 'A2', mould: '', decidedBy: 'patient' };
    const choose = (version: number, measured: object[]) =>
      chair.clinician.call({
        method: 'PUT',
        path,
        version,
        body: { ...body, measured },
        answer: toothChoiceView,
      });
    const refused = await refusal(choose(1, [width]));
    expect(refused.status).toBe(400);
    expect(refused.problem.errors).toMatchObject([{ path: 'measured.0.valueMm' }]);
    expect(refused.problem.errors?.[0]?.problem).toContain('Then it is 8.5 mm');
    const kept = await choose(1, [{ ...width, valueMm: 8.5 }]);
    expect(kept).toMatchObject({ version: 2, decidedBy: 'patient', measured: [{ valueMm: 8.5 }] });
    expect((await refusal(choose(1, []))).status).toBe(412);
  });

  it('keeps the screw of a tracing set, and never puts aside in silence what was stated elsewhere', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D2')).id);
    const { screw: before } = found(stage.tracingKit ?? undefined);
    const state = (version: number, pitchMmPerTurn: number) =>
      chair.clinician.call({
        method: 'PUT',
        path: `/stages/${stage.id}/bearing-screw`,
        version,
        body: { pitchMmPerTurn, raisesBy: 'clockwise', instead: before },
        answer: stageView,
      });
    const stated = await state(stage.version, 0.7);
    expect(stated.tracingKit?.screw).toEqual({ pitchMmPerTurn: 0.7, raisesBy: 'clockwise' });
    const refused = await refusal(state(stated.version, 0.6));
    expect(refused.status).toBe(409);
    expect(refused.problem.detail).toContain('stated as 0.7 mm in one turn, raised clockwise');
    expect((await chair.view(stage.id)).tracingKit?.screw).toEqual(stated.tracingKit?.screw);
  });

  it('checks a capture once, however often the job runs', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D2')).id);
    const count = () => practice.rows((tx) => tx.countBy(CheckVerdict, { stageId: stage.id }));
    const before = await count();
    const captured = await practice.rows((tx) =>
      tx.query<{ id: string }[]>('SELECT id FROM capture WHERE stage_id = $1', [stage.id]),
    );
    for (const { id } of captured) {
      const payload = { organisationId: practice.organisationId, stageId: stage.id, captureId: id };
      await practice.rows((tx) => checkStage(tx, payload, chair.now));
    }
    expect(await count()).toBe(before);
  });

  it('lets a clinician set a gate aside in writing, except the one that protects the laboratory', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D2')).id);
    const missingParts = await chair.capture(stage, { checklist: { 'parts-out': 3 } });
    expect(missingParts.gates.find(({ code }) => code === 'record-complete')?.missing).toEqual([
      'parts in equal to parts out',
    ]);
    const never = await refusal(chair.override(missingParts, 'disinfected-d2', 'The courier is waiting outside.'));
    expect(never.status).toBe(422);
    expect(never.problem.code).toBe('casework.gate-not-overridable');
    const reason = 'One part was thrown away before it was counted.';
    const overridden = await chair.override(missingParts, 'record-complete', reason);
    expect(overridden.gates.find(({ code }) => code === 'record-complete')).toMatchObject({
      open: false,
      overriddenBy: 'Dr Imogen Thorne-Example',
    });
    const [kept] = await practice.rows((tx) => tx.findBy(GateOverride, { stageId: stage.id }));
    expect(kept).toMatchObject({ gate: 'record-complete', reason });
    const events = await practice.rows((tx) => tx.findBy(CaseEvent, { caseId, kind: 'gate-overridden' }));
    expect(events).toHaveLength(1);
  });

  it('shows the day by what may go on, and the case as one line', async () => {
    const on = chair.now.toISOString().slice(0, 10);
    const path = `/stage-board?on=${on}`;
    const board = await chair.clinician.call({ method: 'GET', path, answer: stageBoard });
    const card = found(board.cards.find((each) => each.caseId === caseId));
    expect(card).toMatchObject({ stageCode: 'D2', verdict: 'may-go-on', patientName: 'Ida Booking-Example' });
    expect(card.line.map(({ kind, state }) => `${kind} ${state}`).slice(0, 3)).toEqual([
      'visit done',
      'lab done',
      'visit now',
    ]);
    expect(board.sentence).toBe('1 visit: 1 may go on.');
  });

  it('pauses the final print on a finding that comes after its visit, until a later check passes', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D2')).id);
    expect(stage).toMatchObject({
      zone: 'Europe/London',
      visit: { state: 'in-progress', clinicianName: 'Dr Imogen Thorne-Example' },
      prescription: { signedAt: null, signedBy: null },
    });
    const previewed = await chair.clinician.call({
      method: 'GET',
      path: `/stages/${stage.id}/prescription-preview`,
      answer: prescriptionPreview,
    });
    await chair.sign(stage);
    const forBench = await chair.bench.call({ method: 'GET', path: `/cases/${caseId}`, answer: labCaseView });
    const { work, objects, values } = found(forBench.workOrders.find((each) => each.stage === 'D2'));
    const declared = values.filter(({ name }) => name === 'Disinfected with');
    expect(declared).toHaveLength(1);
    expect(previewed).toMatchObject({ work, objects, values: values.filter((value) => !declared.includes(value)) });
    expect(previewed.laboratoryName).toBe('Lantern Example Laboratory');
    await chair.complete(stage, 'passed');
    await chair.act(found((await chair.stage(caseId, 'D2')).appointmentId), 'finish');
    const passed = await chair.view(stage.id);
    expect(passed.visit?.state).toBe('completed');
    expect(passed.prescription?.signedBy).toBe('Dr Imogen Thorne-Example');
    const [order] = await practice.rows((tx) => tx.findBy(Prescription, { stageId: stage.id }));
    expect(order?.content).toMatchObject({ shade: 'A2', wish: 'As on the wedding picture.' });
    const late = await chair.capture(passed, { readings: [{ code: 'sibilant-test', value: 'contact' }] });
    expect(late.state).toBe('passed');
    expect(late.gates.find(({ code }) => code === 'late-finding')).toMatchObject({ open: true, hard: true });
    const [pause] = await practice.rows((tx) => tx.findBy(FindingPause, { caseId }));
    expect(pause).toMatchObject({ pointOfNoReturn: 'print-final', state: 'open' });
    const path = `/stage-board?on=${chair.now.toISOString().slice(0, 10)}`;
    const { waiting } = await chair.clinician.call({ method: 'GET', path, answer: stageBoard });
    expect(waiting).toMatchObject([
      { kind: 'late-finding', id: stage.id, patientName: 'Ida Booking-Example', zone: 'Europe/London' },
    ]);
    expect((await chair.state(caseId)).alerts).toEqual([]);

    const again = await chair.capture(late, { readings: [{ code: 'sibilant-test', value: 'no-contact' }] });
    expect(again.gates.some(({ code }) => code === 'late-finding')).toBe(false);
    const [after] = await practice.rows((tx) => tx.findBy(FindingPause, { caseId }));
    expect(after?.state).toBe('yielded');
  });

  it('takes a clinician’s written answer to a late finding', async () => {
    const stage = await chair.view((await chair.stage(caseId, 'D2')).id);
    const late = await chair.capture(stage, { readings: [{ code: 'sibilant-test', value: 'contact' }] });
    const reason = 'Heard once by telephone, not reproduced at the second call.';
    const answered = await chair.override(late, 'late-finding', reason);
    expect(answered.gates.find(({ code }) => code === 'late-finding')).toMatchObject({ open: false });
    const pauses = await practice.rows((tx) => tx.findBy(FindingPause, { caseId, state: 'go-on' }));
    expect(pauses).toMatchObject([{ answer: reason }]);
  });
});

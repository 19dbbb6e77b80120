import { jest } from '@jest/globals';
import { alternativesView, caseCourse, caseView, ripple, type CaseCourse, type CaseView } from '@archwright/contracts';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside } from './capture-chairside.js';

jest.setTimeout(240_000);

const REST = 'vertical-dimension-at-rest';
const OCCLUSAL = 'occlusal-vertical-dimension';

/** A first visit that was held, a second under way that was moved before, and the rest still to come. */
describe('the course of a case', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let booked: CaseView;
  let movedTo: string;
  let course: CaseCourse;

  const visitOf = (code: string, of: CaseView = booked) => found(of.stages.find((stage) => stage.code === code));
  const courseVisit = (code: string) => found(course.visits.find((visit) => visit.code === code));
  const measured = (code: string) => course.measurements.filter((each) => each.code === code);

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    booked = await bookedCase({ ...practice, desk: chair.desk }, { path: 'digital-printed-bases' });
    movedTo = await moveElsewhere('D2');
    await chair.begin(booked.id, 'D1');
    await chair.consent(booked.id);
    await chair.passVisitUnderWay(booked.id, 'D1');
    await chair.makeLabWork(booked.id, 'D1');
    const stage = await chair.begin(booked.id, 'D2');
    const lengthsBetween = (landmarks: string, code: string, values: number[]) =>
      values.map((value) => ({ code, value, method: { landmarks, posture: 'upright-unsupported' } }));
    await chair.capture(stage, { readings: lengthsBetween('nose-tip-chin', REST, [80, 80, 80]) });
    await chair.capture(await chair.view(stage.id), {
      readings: [
        ...lengthsBetween('subnasale-gnathion', REST, [68, 69, 71]),
        ...lengthsBetween('subnasale-gnathion', OCCLUSAL, [65, 65, 66]),
      ],
      tracings: [
        {
          stylusOn: 'lower',
          view: 'as-worn',
          posture: 'upright',
          basesMoved: false,
          contact: false,
          pain: false,
          apex: 'single',
        },
      ],
    });
    course = await chair.clinician.call({ method: 'GET', path: `/cases/${booked.id}/course`, answer: caseCourse });
  });
  afterAll(() => practice.close());

  async function moveElsewhere(code: string): Promise<string> {
    const appointmentId = found(visitOf(code).appointmentId);
    const path = `/appointments/${appointmentId}/alternatives`;
    const { starts } = await chair.desk.call({ method: 'GET', path, answer: alternativesView });
    const { startsAt } = found(starts.find((start) => start.startsAt !== visitOf(code).startsAt));
    const body = { appointmentId, startsAt };
    const { id, planHash } = await chair.desk.call({ method: 'POST', path: '/ripples/move', body, answer: ripple });
    await chair.desk.call({ method: 'POST', path: `/ripples/${id}/apply`, body: { planHash }, answer: caseView });
    return startsAt;
  }

  it('sets what was told first beside what happened', () => {
    expect(courseVisit('D1')).toMatchObject({ state: 'passed', firstPlannedAt: visitOf('D1').startsAt });
    expect(courseVisit('D1').finishedAt).not.toBeNull();
    expect(courseVisit('D2')).toMatchObject({
      state: 'in-progress',
      firstPlannedAt: visitOf('D2').startsAt,
      plannedAt: movedTo,
      finishedAt: null,
    });
    expect(movedTo).not.toBe(visitOf('D2').startsAt);
    expect(found(courseVisit('D2').startedAt) >= movedTo.slice(0, 10)).toBe(true);
    expect(courseVisit('D3')).toMatchObject({ firstPlannedAt: visitOf('D3').startsAt, startedAt: null });
  });

  it('knows when the laboratory did its work', () => {
    const steps = course.labSteps.filter(({ afterStage }) => afterStage === 'D1');
    const before = booked.labSteps.filter(({ afterStage }) => afterStage === 'D1');
    expect(steps).toHaveLength(before.length);
    for (const { id, firstPlannedAt, startedAt, finishedAt } of steps) {
      expect(firstPlannedAt).toBe(found(before.find((each) => each.id === id)).startsAt);
      expect([startedAt, finishedAt]).not.toContain(null);
    }
  });

  it('has one row for what may be compared: the median of the readings, other marks apart', () => {
    const { stageId } = courseVisit('D2');
    expect(measured(REST).map(({ method, values }) => [method['landmarks'], values.at(-1)])).toEqual(
      expect.arrayContaining([
        ['subnasale-gnathion', expect.objectContaining({ stageId, value: 69 })],
        ['nose-tip-chin', expect.objectContaining({ stageId, value: 80 })],
      ]),
    );
    expect(measured(OCCLUSAL)[0]).toMatchObject({ name: 'Occlusal vertical dimension', unit: 'mm' });
    expect(measured(OCCLUSAL)[0]?.values.at(-1)?.value).toBe(65);
  });

  it('tells what is worked out, and grades by their names', () => {
    const rest = course.measurements.find(({ code }) => code === 'interocclusal-rest-distance');
    expect(rest?.values.at(-1)?.value).toBe(4);
    const named = course.measurements.flatMap(({ values }) => values.map(({ value }) => value));
    expect(named.some((value) => typeof value === 'object' && !value.label.includes('-'))).toBe(true);
    expect(course.measurements.some(({ code }) => code === 'oral-health-impact-answer')).toBe(false);
  });

  it('keeps the tracings with their visit', () => {
    expect(
      course.visits.map(({ code, tracings }) => [code, tracings.length]).filter(([, count]) => count !== 0),
    ).toEqual([['D2', 1]]);
  });
});

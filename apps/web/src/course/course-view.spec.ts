import type { CaseCourse } from '@archwright/contracts';
import { happenedRows, measuredTable } from './course-view.js';

const TODAY = '2027-02-01';
const visit = (more: Partial<CaseCourse['visits'][number]>): CaseCourse['visits'][number] => ({
  stageId: 'v1',
  code: 'A1',
  title: 'Examination',
  round: 1,
  state: 'passed',
  appointmentState: 'completed',
  clinicianName: 'Dr Wren Example',
  firstPlannedAt: null,
  plannedAt: null,
  startedAt: null,
  finishedAt: null,
  tracings: [],
  photographs: [],
  ...more,
});
const step = (more: Partial<CaseCourse['labSteps'][number]>): CaseCourse['labSteps'][number] => ({
  id: 's1',
  title: 'Base plates',
  arches: ['upper'],
  round: 1,
  afterStage: 'A1',
  state: 'finished',
  firstPlannedAt: null,
  plannedAt: null,
  startedAt: null,
  finishedAt: null,
  ...more,
});
const course = (more: Partial<CaseCourse>): CaseCourse => ({
  number: '27-0001',
  zone: 'Europe/London',
  visits: [],
  labSteps: [],
  measurements: [],
  ...more,
});

describe('first plan and what happened', () => {
  it('counts days by the calendar of the clinic, not hours', () => {
    // 23:30 and 00:30 on the wall of the clinic: one hour, and the next day.
    const late = visit({ firstPlannedAt: '2027-07-01T22:30:00Z', plannedAt: null, startedAt: '2027-07-01T23:30:00Z' });
    expect(happenedRows(course({ visits: [late] }), TODAY)[0]?.daysLater).toBe(1);
    const early = visit({ firstPlannedAt: '2027-01-12T14:45:00Z', startedAt: '2027-01-11T09:00:00Z' });
    expect(happenedRows(course({ visits: [early] }), TODAY)[0]?.daysLater).toBe(-1);
  });

  it('goes by when a visit was begun, else by when it is planned, and says which', () => {
    const [begun, planned, open] = happenedRows(
      course({
        visits: [
          visit({ plannedAt: '2027-01-12T09:00:00Z', startedAt: '2027-01-12T09:10:00Z' }),
          visit({ stageId: 'v2', code: 'A2', plannedAt: '2027-01-19T09:00:00Z' }),
          visit({ stageId: 'v3', code: 'A3' }),
        ],
      }),
      TODAY,
    );
    expect([begun?.then, planned?.then, open?.then]).toEqual([
      'Tue 12 Jan, 09:10',
      'Tue 19 Jan, 09:00 (planned)',
      'not planned',
    ]);
    expect(begun).toMatchObject({ first: 'not in the first plan', daysLater: null });
  });

  it('holds a visit that was begun at the very minute of its plan for begun', () => {
    const nine = '2027-01-12T09:00:00Z';
    const then = (more: Partial<CaseCourse['visits'][number]>) =>
      happenedRows(course({ visits: [visit({ plannedAt: nine, ...more })] }), TODAY)[0]?.then;
    expect([then({ startedAt: nine }), then({ finishedAt: nine }), then({})]).toEqual([
      'Tue 12 Jan, 09:00',
      'Tue 12 Jan, 09:00',
      'Tue 12 Jan, 09:00 (planned)',
    ]);
  });

  it('says what became of what did not take place, and counts no days for it', () => {
    const nine = { firstPlannedAt: '2027-01-12T09:00:00Z', plannedAt: '2027-01-19T09:00:00Z' };
    const rows = happenedRows(
      course({
        visits: [
          visit({ ...nine, state: 'planned', appointmentState: 'missed' }),
          visit({ ...nine, stageId: 'v2', code: 'A2', state: 'dropped' }),
          visit({ stageId: 'v3', code: 'A3', state: 'dropped' }),
        ],
        labSteps: [
          step({ ...nine, state: 'rejected' }),
          step({ id: 's2', round: 2, state: 'discarded' }),
          step({ ...nine, id: 's3', round: 3, state: 'discarded', startedAt: '2027-01-14T08:00:00Z' }),
        ],
      }),
      TODAY,
    );
    expect(rows.map(({ key, then, daysLater }) => [key, then, daysLater])).toEqual([
      ['v1', 'Tue 19 Jan, 09:00 (missed)', null],
      ['s1', 'Tue 19 Jan, 09:00 (rejected)', null],
      ['s2', 'discarded', null],
      ['s3', 'Thu 14 Jan, 08:00 (discarded)', 2],
      ['v2', 'Tue 19 Jan, 09:00 (dropped)', null],
      ['v3', 'dropped', null],
    ]);
  });

  it('sets the laboratory’s work after the visit that it follows, once', () => {
    const rows = happenedRows(
      course({
        visits: [
          visit({ state: 'repeated' }),
          visit({ stageId: 'v2', round: 2 }),
          visit({ stageId: 'v3', code: 'A2' }),
        ],
        labSteps: [step({}), step({ id: 's2', round: 2 })],
      }),
      TODAY,
    );
    expect(rows.map(({ key }) => key)).toEqual(['v1', 's1', 's2', 'v2', 'v3']);
    expect(rows.map(({ detail }) => detail)).toContain('Dr Wren Example, 2. time');
  });
});

describe('measurements over the visits', () => {
  const rest = {
    code: 'vertical-dimension-at-rest',
    name: 'Vertical dimension at rest',
    unit: 'mm',
    arch: null,
    side: null,
    region: null,
  };
  const method = { landmarks: 'subnasale-gnathion' };
  const at = '2027-01-12T09:30:00Z';

  it('have a column for each visit that has one, and a row of their own for other marks', () => {
    const { columns, rows } = measuredTable(
      course({
        visits: [visit({}), visit({ stageId: 'v2', title: 'Jaw relation' }), visit({ stageId: 'v3', title: 'Try-in' })],
        measurements: [
          {
            ...rest,
            method,
            values: [
              { stageId: 'v1', value: 68, at },
              { stageId: 'v3', value: 67.333333, at: '2027-01-26T09:30:00Z' },
            ],
          },
          { ...rest, method: { landmarks: 'nose-tip-chin' }, values: [{ stageId: 'v1', value: 81.5, at }] },
        ],
      }),
      TODAY,
    );
    expect(columns).toEqual(['Tue 12 Jan: Examination', 'Tue 26 Jan: Try-in']);
    expect(rows.map(({ cells }) => cells)).toEqual([
      ['68 mm', '67.33 mm'],
      ['81.5 mm', ''],
    ]);
    expect(rows.map(({ how }) => how)).toEqual(['subnasale gnathion', 'nose tip chin']);
  });

  it('say grades by name, findings by yes and no, and where and how they were taken', () => {
    const { rows } = measuredTable(
      course({
        visits: [visit({})],
        measurements: [
          {
            ...rest,
            name: 'Stability',
            unit: null,
            arch: 'lower',
            side: 'left',
            method: {},
            values: [{ stageId: 'v1', value: { label: 'rocks' }, at }],
          },
          {
            ...rest,
            name: 'Sibilants',
            unit: null,
            method: { language: 'de' },
            values: [{ stageId: 'v1', value: false, at }],
          },
        ],
      }),
      TODAY,
    );
    expect(rows).toMatchObject([
      { name: 'Stability, lower, left', cells: ['rocks'] },
      { name: 'Sibilants', how: 'German', cells: ['no'] },
    ]);
  });
});

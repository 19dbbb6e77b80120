import { alertPage, stageView, type RecordCapture, type StageView } from '@archwright/contracts';
import { Capture, Tracing } from '@archwright/records';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';
import { cookieOf, postSession } from './practice/demo-api.js';

const LONG_MS = 240_000;
type Given = RecordCapture['tracings'][number];
type Points = Given['points'] & object;

/** Arms and apex by hand: right y = x/2 + 1, left y = 2.1 - 0.6 x, crossing at (1, 1.5). */
const POINTS: Points = [
  ...[2, 3, 4, 5, 6].map((x) => ({ phase: 'right' as const, x, y: x / 2 + 1 })),
  ...[0, -1, -2, -3, -4].map((x) => ({ phase: 'left' as const, x, y: 2.1 - 0.6 * x })),
  ...[0.9, 0.95, 1, 1.05, 1.1].map((x) => ({ phase: 'closure' as const, x, y: 1.5 })),
];
const mirrored = (points: Points): Points => points.map((point) => ({ ...point, x: -point.x }));

const drawn = (more: Partial<Given> = {}): Given => ({
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  basesMoved: false,
  contact: false,
  pain: false,
  points: POINTS,
  ...more,
});

describe('a tracing drawn at the chair', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let stageId: string;
  let caseId: string;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    caseId = (await bookedCase({ ...practice, desk: chair.desk }, { path: 'digital-printed-bases' })).id;
    await chair.begin(caseId, 'D1');
    await chair.consent(caseId);
    await chair.passVisitUnderWay(caseId, 'D1');
    await chair.makeLabWork(caseId, 'D1');
    stageId = (await chair.begin(caseId, 'D2')).id;
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  const stage = (): Promise<StageView> => chair.view(stageId);
  const rows = () =>
    practice.rows(async (tx) => ({
      captures: await tx.countBy(Capture, { stageId }),
      tracings: await tx.count(Tracing),
    }));
  async function drawing(number: number | string): Promise<Response> {
    const cookie = cookieOf(
      await postSession(practice.url, { signInName: 'chair@example.test', password: demoPassword }),
    );
    return fetch(`${practice.url}/stages/${stageId}/tracings/${String(number)}/drawing`, { headers: { cookie } });
  }

  it.each<[string, unknown, string]>([
    ['too few points', drawn({ points: POINTS.slice(0, 2) }), 'points'],
    ['points in one line', drawn({ points: POINTS.map((point) => ({ ...point, y: 1 })) }), 'points'],
    ['pixels', drawn({ points: POINTS.map(({ phase, x, y }) => ({ phase, x: 90 * x, y: 90 * y })) }), 'points'],
    ['points and a finding', drawn({ apex: 'single' }), 'apex'],
    ['neither points nor a finding', drawn({ points: undefined }), 'apex'],
    ['more points than are taken', drawn({ points: Array.from({ length: 2001 }, () => found(POINTS[0])) }), 'points'],
  ])('is refused with the reason for %s, and nothing is saved', async (_, tracing, field) => {
    const before = await rows();
    const { version } = await stage();
    const call = chair.clinician.call({
      method: 'POST',
      path: `/stages/${stageId}/captures`,
      version,
      body: { tracings: [tracing], otherCentricRelation: [{ method: 'swallowing' }] },
      answer: stageView,
    });
    const refused = await refusal(call);
    expect(refused.status).toBe(400);
    expect(refused.problem.errors?.map(({ path }) => path)).toEqual([`tracings.0.${field}`]);
    expect(found(refused.problem.errors?.[0]).problem).toMatch(/\w+/);
    expect(await rows()).toEqual(before);
  });

  it('says what is wrong with the points in words', async () => {
    const refused = await refusal(chair.save(await stage(), { tracings: [drawn({ points: POINTS.slice(0, 2) })] }));
    expect(refused.problem.errors?.[0]?.problem).toBe('Tracing: 2 points given, at least 6 are needed.');
  });

  it('is evaluated by the service: apex (1, 1.5), angle 122.471 degrees, whichever view it was drawn in', async () => {
    const seen = await chair.capture(await stage(), {
      tracings: [drawn(), drawn({ view: 'mirrored', points: mirrored(POINTS) })],
    });
    for (const number of [1, 2]) {
      const tracing = found(seen.tracings[number - 1]);
      expect(tracing).toMatchObject({
        number,
        isDrawn: true,
        apex: 'single',
        form: 'typical',
        armRmsMm: 0,
        offsetMm: 0,
      });
      expect(tracing.closures).toMatchObject({ count: 5, maxPairMm: 0.2 });
      const { apex, apexAngleDeg } = found(tracing.evaluation);
      expect(apex).toMatchObject({ xMm: 1, yMm: 1.5 });
      expect(apexAngleDeg).toBeCloseTo(122.471, 3);
    }
    const verdict = found(seen.verdicts.find(({ rule }) => rule === 'centric-relation-record'));
    expect(verdict).toMatchObject({ verdict: 'pass', reason: expect.stringContaining('Tracing usable') as string });
  });

  it('raises a doubt when the right movement lies on the left of the stated view', async () => {
    const seen = await chair.capture(await stage(), { tracings: [drawn({ points: mirrored(POINTS) })] });
    expect(seen.tracings.at(-1)?.doubts).toEqual(['arms-swapped']);
    const verdict = found(seen.verdicts.find(({ rule }) => rule === 'centric-relation-record'));
    expect(verdict).toMatchObject({
      verdict: 'caution',
      reason: expect.stringContaining('check the stated view') as string,
    });
  });

  it('keeps a drawing that names nobody and may run nothing', async () => {
    const answer = await drawing(1);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('image/svg+xml; charset=utf-8');
    expect(answer.headers.get('content-security-policy')).toBe("default-src 'none'; frame-ancestors 'none'; sandbox");
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    const svg = await answer.text();
    expect(svg).toMatch(/^<svg /);
    expect(svg).toContain('apex angle 122.5 degrees');
    expect(svg).not.toContain('Booking-Example');
    // The mirrored one is the same drawing as worn, and every point is in it.
    expect(await (await drawing(2)).text()).toBe(svg);
    expect(svg.match(/r="0.06"/g)).toHaveLength(5);
    expect((await drawing(99)).status).toBe(404);
    expect((await drawing('first')).status).toBe(400);
  });

  it('fails where the points make no apex, and three of them raise the alert', async () => {
    const parallel = POINTS.map(({ phase, x }) => ({ phase, x, y: phase === 'left' ? 0.02 * x : 0.02 * x + 1 }));
    const blunt = drawn({ points: parallel });
    const failed = await chair.capture(await stage(), { tracings: [blunt, blunt, blunt] });
    expect(failed.tracings.at(-1)).toMatchObject({ apex: 'none', evaluation: null, isDrawn: true });
    expect(failed.verdicts.find(({ action }) => action === 'return-to-stage')?.reason).toContain('3 is the limit');
    const { items } = await chair.desk.call({ method: 'GET', path: '/remake-alerts', answer: alertPage });
    expect(items.map((item) => [item.caseId, item.trigger])).toContainEqual([caseId, 'jaw-relation-not-recorded']);
  });

  it('has its equal in another method, with the same statistics of its closures', async () => {
    const closures = { count: 5, rmsMm: 0.4, maxPairMm: 0.7 };
    const half = chair.save(await stage(), {
      otherCentricRelation: [{ method: 'swallowing', closures: { ...closures, count: 0 } }],
    });
    expect((await refusal(half)).problem.errors?.map(({ path }) => path)).toEqual([
      'otherCentricRelation.0.closures.count',
    ]);
    const seen = await chair.capture(await stage(), { otherCentricRelation: [{ method: 'swallowing', closures }] });
    expect(seen.otherCentricRelation.at(-1)).toEqual({ method: 'swallowing', closures });
  });
});

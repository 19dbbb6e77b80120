import { measurementRangesView, type MeasurementRangesView } from '@archwright/contracts';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, answers, refusal } from './capture-chairside.js';

const LONG_MS = 180_000;
const HEIGHT = { code: 'mandibular-bone-height', value: 9, unit: 'mm' };

describe('a practice’s own ranges', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let manager: ApiSession;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    manager = await practice.signIn('manager');
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  const read = (): Promise<MeasurementRangesView> =>
    manager.call({ method: 'GET', path: '/measurement-ranges', answer: measurementRangesView });
  const change = (version: number, body: object): Promise<MeasurementRangesView> =>
    manager.call({ method: 'PUT', path: '/measurement-ranges', version, body, answer: measurementRangesView });

  it('refuses at once every range past what is possible and every fixed limit, and keeps nothing', async () => {
    const before = await read();
    expect(before).toMatchObject({ version: 1, history: [] });
    expect(before.note).toContain('does not replace');
    const refused = await refusal(
      change(1, {
        usual: { OVD: { min: 30, max: 70 }, 'border-thickness/moon': { min: 1, max: 2 } },
        limits: { 'rest-distance-none-mm': -1, 'failed-tracings': 2 },
        reason: 'A test of refusals.',
      }),
    );
    expect(refused.status).toBe(400);
    expect(refused.problem.errors?.map(({ path }) => path)).toEqual([
      'usual.OVD',
      'usual.border-thickness/moon',
      'limits.rest-distance-none-mm',
    ]);
    expect(refused.problem.errors?.[0]?.problem).toContain('38 to 98 mm');
    expect(await read()).toEqual(before);
  });

  it('are judged by from the next check on, and named with their version', async () => {
    const usual = { CIW: { min: 8, max: 9 } };
    const body = { usual, limits: { 'failed-tracings': 2 }, reason: 'Narrower teeth in our region.' };
    const changed = await change(1, body);
    expect(changed.version).toBe(2);
    expect(changed.usual.find(({ key }) => key === 'central-incisor-width')?.own).toEqual({ min: 8, max: 9 });
    expect(changed.history).toMatchObject([{ version: 2, limits: { 'failed-tracings': 2 }, reason: body.reason }]);
    expect((await refusal(change(1, body))).status).toBe(412);

    const opened = await bookedCase(practice, { path: 'digital-printed-bases' });
    const begun = await chair.begin(opened.id, 'D1');
    expect(begun.overlay?.version).toBe(2);
    const width = { code: 'CIW', value: 9.5, method: { object: 'old-denture' } };
    const checked = await chair.capture(begun, { readings: [...answers(begun), HEIGHT, width] });
    const verdict = found(checked.verdicts.find(({ reason }) => reason.includes('9.5 mm')));
    expect(verdict).toMatchObject({ verdict: 'caution', ruleVersion: '1+p2', standing: 'project default' });
    expect(verdict.source).toBe('the practice’s own setting, version 2');
  });
});

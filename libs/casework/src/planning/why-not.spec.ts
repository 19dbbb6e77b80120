import type { PlanRequest } from '@archwright/protocol';
import { NOW_MS, aClinic, aPractice, aRequest } from './practice.builder.js';
import { withLongerWaits } from './relaxed-lags.js';
import { findOffers } from './search.js';
import { explainWhyNot } from './why-not.js';

const DAY_MS = 86_400_000;
const dates = (fromDay: number, days: number): string[] =>
  Array.from({ length: days }, (_, day) => new Date(NOW_MS + (fromDay + day) * DAY_MS).toISOString().slice(0, 10));

type Places = PlanRequest['practice']['laboratories'][number]['workCentres'][number]['places'];

/** Friday of the twelfth week: the last day of the axis on which anybody works. */
const LAST_DAY = 81;

/** A patient who is away from the day after the earliest placement until the last day, with one check to come after it. */
function awayAfterPlacement(): PlanRequest {
  const whole = aRequest('conventional');
  const stages = whole.progress.stages.map((row) => (row.code === 'R2' ? { ...row, state: 'dropped' as const } : row));
  const request = { ...whole, progress: { ...whole.progress, stages } };
  const placement = findOffers(request, 1)[0]?.plan.visits.find(({ isDelivery }) => isDelivery);
  const away = Math.floor(((placement?.startMs ?? 0) - NOW_MS) / DAY_MS) + 1;
  return { ...request, patient: { ...request.patient, unavailableOn: dates(away, LAST_DAY - away) } };
}

describe('why there is no plan', () => {
  it('names the stage that cannot be reached and the shortest longer wait: one day less has no plan', () => {
    const request = awayAfterPlacement();
    expect(findOffers(request, 1)).toEqual([]);
    const why = explainWhyNot(request, null, { everyClinic: request, relax: {} });
    const waits = why.relaxations.filter(({ code }) => code === 'longer-wait');
    const found = (extra: Record<string, number>) =>
      findOffers({ ...request, lagOverrides: withLongerWaits(request.chain, {}, extra) }, 1)[0]?.plan.deliveryOn;
    expect(request.chain.stages.map(({ title }) => title)).toContain(why.failingStage);
    for (const { apply, deliveryOn } of waits) {
      const [[code, days]] = Object.entries(apply?.['extraWaitDays'] ?? {}) as [[string, number]];
      expect(found({ [code]: days })).toBe(deliveryOn);
      expect(days === 1 ? undefined : found({ [code]: days - 1 })).toBeUndefined();
    }
    expect(waits).toHaveLength(1);
    expect(why.relaxations.map(({ code }) => code)).toEqual(['longer-wait', 'unavailable-days']);
  }, 300_000);

  it('proposes another clinic and another clinician where those alone give a plan', () => {
    const whole = { startMs: NOW_MS - DAY_MS, endMs: NOW_MS + 200 * DAY_MS };
    const full = aClinic('north', [whole]);
    const request = aRequest('repair', { practice: aPractice([full]) });
    const everyClinic = aRequest('repair', { practice: aPractice([full, aClinic('east')]) });
    const why = explainWhyNot(request, null, { everyClinic, relax: {} });
    expect(why.relaxations.map(({ code }) => code)).toEqual(['other-clinic']);
    expect(why.relaxations[0]?.apply).toEqual({ anyClinic: true });

    const clinic = aClinic('north');
    const clinicians = clinic.clinicians.map((each, index) => (index === 0 ? { ...each, absences: [whole] } : each));
    const absent = aRequest('repair', { practice: aPractice([{ ...clinic, clinicians }]) });
    const own = { ...absent, wishes: { ...absent.wishes, clinicianId: 'north-clinician-1' } };
    const whyAbsent = explainWhyNot(own, null, { everyClinic: own, relax: {} });
    expect(whyAbsent.relaxations.map(({ code }) => code)).toEqual(['other-clinician']);
    expect(whyAbsent.relaxations[0]?.deliveryOn).toBe(
      findOffers({ ...own, wishes: { ...own.wishes, clinicianId: null } }, 1)[0]?.plan.deliveryOn ?? null,
    );
  }, 120_000);

  it('names the bench where one place more gives a plan, which is for the laboratory to decide', () => {
    const base = aRequest('repair');
    const [bench] = base.chain.steps.filter(({ segments }) => segments.some(({ holdsPlace }) => holdsPlace));
    const whole = { startMs: NOW_MS - DAY_MS, endMs: NOW_MS + 200 * DAY_MS };
    const withBench = (change: (places: Places) => Places): PlanRequest => ({
      ...base,
      practice: {
        ...base.practice,
        laboratories: base.practice.laboratories.map((laboratory) => ({
          ...laboratory,
          workCentres: laboratory.workCentres.map((centre) =>
            centre.code === bench?.workCentre ? { ...centre, places: change(centre.places) } : centre,
          ),
        })),
      },
    });
    const taken = (places: Places): Places => places.map((place) => ({ ...place, busy: [whole] }));
    const request = withBench(taken);
    expect(() => findOffers(request, 1)).toThrow('Free or add a place');
    const why = explainWhyNot(request, null, { everyClinic: request, relax: {} });
    expect(why.relaxations.map(({ code, apply }) => [code, apply])).toEqual([['one-place-more', null]]);
    expect(why.relaxations[0]?.changes[0]?.sentence).toContain(bench?.workCentre.replaceAll('-', ' '));
    const oneMore = withBench((places) => [...taken(places), { id: 'one-more', label: '', busy: [] }]);
    expect(findOffers(oneMore, 1)[0]?.plan.deliveryOn).toBe(why.relaxations[0]?.deliveryOn);
  }, 120_000);

  it('proposes two together when neither alone gives a plan, and none when no two do', () => {
    const whole = { startMs: NOW_MS - DAY_MS, endMs: NOW_MS + 200 * DAY_MS };
    const clinic = aClinic('north');
    const clinicians = clinic.clinicians.map((each, index) => (index === 0 ? { ...each, absences: [whole] } : each));
    const base = aRequest('repair', { practice: aPractice([{ ...clinic, clinicians }]) });
    const request = {
      ...base,
      wishes: { ...base.wishes, clinicianId: 'north-clinician-1' },
      patient: { ...base.patient, unavailableOn: dates(0, 100) },
    };
    const why = explainWhyNot(request, null, { everyClinic: request, relax: {} });
    expect(why.relaxations.map(({ code, apply }) => [code, apply])).toEqual([
      ['other-clinician-and-unavailable-days', { anyClinician: true, ignoreUnavailable: true }],
    ]);
    const agreed = { ...request, ignoreUnavailable: true, wishes: { ...request.wishes, clinicianId: null } };
    expect(findOffers(agreed, 1)[0]?.plan.deliveryOn).toBe(why.relaxations[0]?.deliveryOn);
    expect(findOffers({ ...request, ignoreUnavailable: true }, 1)).toEqual([]);

    const full = { ...request, practice: aPractice([aClinic('north', [whole])]) };
    const hopeless = explainWhyNot(full, null, { everyClinic: full, relax: {} });
    expect(hopeless.relaxations).toEqual([]);
    expect(hopeless.sentence).toContain('has no time left');
  }, 120_000);
});

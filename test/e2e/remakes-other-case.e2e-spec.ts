import { subtract } from '@archwright/calendar';
import { alertPage, remakeAlertView, type RecordCapture, type RemakeAlertView } from '@archwright/contracts';
import { Chair, Occupancy, Stage, TreatmentCase, claim } from '@archwright/records';
import { NOW, bookedCase, found, openBookingPractice, overlaps, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';

const LONG_MS = 300_000;
const DAY_MS = 86_400_000;
const DIGITAL = { path: 'digital-printed-bases' };

const blunt: RecordCapture['tracings'][number] = {
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  apex: 'double',
  basesMoved: false,
  contact: false,
  pain: false,
};

describe('a remake that fits only when another case makes room', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let failing: string;
  let other: string;
  let alert: RemakeAlertView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    failing = (await bookedCase(practice, DIGITAL)).id;
    await chair.begin(failing, 'D1');
    await chair.consent(failing);
    await chair.passVisitUnderWay(failing, 'D1');
    await chair.makeLabWork(failing, 'D1');
    const begun = await chair.begin(failing, 'D2');
    other = (await bookedCase({ ...practice, desk: chair.desk }, DIGITAL)).id;
    await leaveOneSlot();
    await chair.capture(begun, { tracings: [blunt, blunt, blunt] });
    alert = await read();
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  /** The patient can come on one day only while the bases last, and on that day every chair is full. */
  async function leaveOneSlot(): Promise<void> {
    const visit = await chair.stage(other, 'D2');
    const onlyDay = found(visit.startsAt).slice(0, 10);
    const days = Array.from({ length: 16 }, (_, index) => new Date(chair.now.getTime() + index * DAY_MS));
    const unavailableOn = days.map((day) => day.toISOString().slice(0, 10)).filter((day) => day !== onlyDay);
    await practice.rows(async (tx) => {
      const { wishes } = await tx.findOneByOrFail(TreatmentCase, { id: failing });
      await tx.update(TreatmentCase, { id: failing }, { wishes: { ...wishes, unavailableOn } });
      const day = { startMs: Date.parse(`${onlyDay}T08:00:00Z`), endMs: Date.parse(`${onlyDay}T18:00:00Z`) };
      for (const { id } of await tx.find(Chair)) {
        const taken = (await tx.findBy(Occupancy, { resourceId: id }))
          .map(({ startsAt, endsAt }) => ({ startMs: startsAt.getTime(), endMs: endsAt.getTime() }))
          .filter(({ startMs, endMs }) => startMs < day.endMs && endMs > day.startMs)
          .sort((a, b) => a.startMs - b.startMs);
        const blocks = subtract([day], taken).map(({ startMs, endMs }) => ({
          resourceId: id,
          startsAt: new Date(startMs),
          endsAt: new Date(endMs),
          purpose: 'busy' as const,
        }));
        await claim(tx, blocks, chair.now);
      }
    });
  }

  const read = async (): Promise<RemakeAlertView> => {
    const { items } = await chair.desk.call({ method: 'GET', path: '/remake-alerts', answer: alertPage });
    return found(items.find(({ caseId }) => caseId === failing));
  };
  const accept = ({ id, version, proposals }: RemakeAlertView) => {
    const proposal = found(proposals[0]);
    const body = { proposalId: proposal.id, planHash: proposal.planHash };
    const path = `/remake-alerts/${id}/acceptance`;
    return chair.desk.call({ method: 'POST', path, version, body, answer: remakeAlertView });
  };
  const goesOf = (caseId: string) =>
    practice.rows((tx) => tx.find(Stage, { where: { caseId }, order: { position: 'ASC', round: 'ASC' } }));

  it('proposes both changes together, with the bound that no such plan falls below', () => {
    expect(alert.noProposalReason).toBeNull();
    const proposal = found(alert.proposals[0]);
    expect(proposal.otherCases).toBe(1);
    expect(proposal.ripples.map(({ caseId }) => caseId)).toEqual([failing, other]);
    expect(proposal.leastMovedVisits).toBeGreaterThanOrEqual(1);
    expect(proposal.movedVisits).toBeGreaterThanOrEqual(proposal.leastMovedVisits);
    expect(found(proposal.ripples[1]).calls).toHaveLength(1);
  });

  it(
    'changes neither case when one of them has changed meanwhile, and looks for a fresh plan',
    async () => {
      const before = await goesOf(failing);
      await practice.rows((tx) => tx.increment(TreatmentCase, { id: other }, 'version', 1));
      const refused = await refusal(accept(alert));
      expect(refused).toMatchObject({ status: 409, problem: { code: 'casework.plan-conflict' } });
      expect(await goesOf(failing)).toEqual(before);
      expect(await chair.runJobs()).toBeGreaterThan(0);
      const fresh = await read();
      expect(fresh.proposals).toHaveLength(1);
      expect(found(fresh.proposals[0]).id).not.toBe(found(alert.proposals[0]).id);
      alert = fresh;
    },
    LONG_MS,
  );

  it('books both cases in one go', async () => {
    const [own, its] = found(alert.proposals[0]).ripples;
    await accept(alert);
    for (const [caseId, ripple] of [
      [failing, own],
      [other, its],
    ] as const) {
      const { stages } = await chair.state(caseId);
      for (const visit of found(ripple).plan.visits) {
        const booked = stages.find((stage) => visit.stages.includes(stage.code) && stage.state === 'planned');
        expect(booked?.startsAt).toBe(visit.startsAt);
      }
    }
    expect(await overlaps(practice)).toBe(0);
  });
});

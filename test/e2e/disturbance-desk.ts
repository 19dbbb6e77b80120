import { proposeRepairs } from '@archwright/casework';
import { disturbanceView, type DisturbanceView, type EnterDisturbance } from '@archwright/contracts';
import { NOW, found, type BookingPractice } from './booking-practice.js';

/** A front desk that enters what falls away, with the worker that looks for repairs. */
export function disturbanceDesk(practice: BookingPractice, now: () => Date = () => NOW) {
  const { desk } = practice;
  const read = (id: string) => desk.call({ method: 'GET', path: `/disturbances/${id}`, answer: disturbanceView });

  async function propose(disturbanceId: string): Promise<void> {
    const { organisationId, searches } = practice;
    const db = await practice.rows((tx) => Promise.resolve(tx.dataSource));
    await proposeRepairs({ db, searches }, { organisationId, disturbanceId }, now());
  }

  /** Enters it and does what the worker would do with the job that it leaves. */
  async function entered(body: Omit<EnterDisturbance, 'reason'>): Promise<DisturbanceView> {
    const { id, state } = await desk.call({
      method: 'POST',
      path: '/disturbances',
      body: { ...body, reason: 'A test.' },
      answer: disturbanceView,
    });
    expect(state).toBe('open');
    await propose(id);
    return read(id);
  }

  const accept = ({ id, version, proposals: [proposal] }: DisturbanceView, planHash = found(proposal).planHash) =>
    desk.call({
      method: 'POST',
      path: `/disturbances/${id}/acceptance`,
      version,
      body: { proposalId: found(proposal).id, planHash },
      answer: disturbanceView,
    });

  const decide = ({ id, version }: DisturbanceView, decision: 'keep' | 'withdraw') =>
    desk.call({
      method: 'POST',
      path: `/disturbances/${id}/decision`,
      version,
      body: { decision },
      answer: disturbanceView,
    });

  return { read, propose, entered, accept, decide };
}

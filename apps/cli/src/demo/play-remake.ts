import {
  alertPage,
  remakeAlertView,
  type RecordCapture,
  type RemakeAlertView,
  type StageView,
} from '@archwright/contracts';
import { setTimeout as pause } from 'node:timers/promises';
import type { Narrator } from './narrator.js';
import { whenInWords } from './narrator.js';
import { StoryBroken, labLoad, must, type Cast } from './cast.js';
import { completeChecklist, requiredReadings } from './readings.js';
import type { Treatment } from './treatment.js';

type Tracing = RecordCapture['tracings'][number];

const blunt: Tracing = {
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  apex: 'none',
  basesMoved: false,
  contact: false,
  pain: false,
};

/** The combined visit goes wrong: the vertical dimension is corrected in the chair, the tracing is not to be had. */
export async function playRemake(
  cast: Cast,
  treatment: Treatment,
  laboratoryId: string,
  narrator: Narrator,
): Promise<void> {
  narrator.scene('The vertical dimension is too high, and is corrected in the same visit');
  const begun = await treatment.begin('D2');
  const corrected = await correctVerticalDimension(treatment, begun, narrator);

  narrator.scene('Three tracings fail');
  const failed = await treatment.capture(corrected, { tracings: [blunt, blunt, blunt] });
  const verdict = must(
    failed.verdicts.find(({ action }) => action === 'return-to-stage'),
    'a verdict that sends the case back',
  );
  narrator.say(verdict.reason);
  await treatment.finish(failed, 'repeat');

  narrator.scene('The alert, and the plan with the fewest calls');
  const alert = await waitForProposals(cast, treatment.caseId);
  narrator.say(`${alert.reason} Back to ${alert.returnToStage}; discarded: ${alert.discards.join(', ') || 'nothing'}.`);
  const proposal = must(alert.proposals[0], 'a proposal');
  narrator.say(
    `"${proposal.label}": ${String(proposal.movedVisits)} visits move, no plan moves fewer than ${String(proposal.leastMovedVisits)}; ${String(proposal.otherCases)} other cases are touched.`,
  );
  for (const ripple of proposal.ripples) {
    narrator.table(
      ['visit', 'was', 'becomes'],
      ripple.visits.map(({ title, before, after, zone }) => [
        title,
        before === null ? '(new)' : whenInWords(before, zone),
        after === null ? '(dropped)' : whenInWords(after, zone),
      ]),
    );
    for (const call of ripple.calls)
      narrator.say(`${call.byMail ? 'Told by mail' : 'To be called'}: ${call.patientName}`);
  }
  await acceptAndCompareLoad(cast, alert, proposal, laboratoryId, narrator);

  narrator.scene('The second combined visit succeeds');
  await treatment.makeLabWork('D1');
  await treatment.completeStage('D2');
  await treatment.makeLabWork('D2');
}

async function correctVerticalDimension(
  treatment: Treatment,
  begun: StageView,
  narrator: Narrator,
): Promise<StageView> {
  const tooHigh = await treatment.capture(begun, {
    readings: requiredReadings(begun, { 'occlusal-vertical-dimension': 67, 'sibilant-test': 'contact' }),
    checklist: completeChecklist(begun),
  });
  const failure = must(
    tooHigh.verdicts.find(({ verdict, rule }) => verdict === 'fail' && rule.includes('sibilant')),
    'the sibilant check to fail',
  );
  narrator.say(failure.reason);
  const corrected = await treatment.capture(tooHigh, {
    readings: requiredReadings(tooHigh, { 'occlusal-vertical-dimension': 65, 'sibilant-test': 'no-contact' }),
  });
  if (corrected.verdicts.some(({ verdict, rule }) => verdict === 'fail' && rule.includes('sibilant'))) {
    throw new StoryBroken('expected the corrected vertical dimension to pass');
  }
  narrator.say('Lowered by 2 mm and measured again: speech is clear, the check passes.');
  return corrected;
}

async function waitForProposals(cast: Cast, caseId: string): Promise<RemakeAlertView> {
  for (let attempt = 0; attempt < 150; attempt++) {
    const { items } = await cast.desk.call({ method: 'GET', path: '/remake-alerts?state=planned', answer: alertPage });
    const alert = items.find((item) => item.caseId === caseId);
    if (alert !== undefined) return alert;
    await pause(200);
  }
  throw new StoryBroken('expected a remake alert with proposals within 30 seconds');
}

async function acceptAndCompareLoad(
  cast: Cast,
  alert: RemakeAlertView,
  { id: proposalId, planHash }: RemakeAlertView['proposals'][number],
  laboratoryId: string,
  narrator: Narrator,
): Promise<void> {
  const from = alert.raisedAt.slice(0, 10);
  const before = await labLoad(cast, laboratoryId, from);
  const accepted = await cast.desk.call({
    method: 'POST',
    path: `/remake-alerts/${alert.id}/acceptance`,
    version: alert.version,
    body: { proposalId, planHash },
    answer: remakeAlertView,
  });
  if (accepted.state !== 'accepted') throw new StoryBroken('expected the proposal to be accepted');
  const after = await labLoad(cast, laboratoryId, from);
  narrator.say('Accepted. Laboratory load of the coming four weeks, minutes:');
  narrator.table(
    ['work centre', 'before', 'after'],
    [...after]
      .map(([name, minutes]) => [name, String(before.get(name) ?? 0), String(minutes)])
      .filter(([, one, other]) => one !== '0' || other !== '0'),
  );
}

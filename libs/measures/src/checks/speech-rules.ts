import { fromMemory, published } from '../standing.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';
import type { Stage } from './stage.js';
import { jawRelationWayBack } from './vertical-rules.js';

const VISITS = ['jaw-relation', 'trial', 'placement'] as const;

export type Stability = 'stable' | 'unstable' | 'not-stated';

/** Stability of all bases of this path together: one loose base makes every contact in speech doubtful. */
export function stabilityOfBases(stage: Stage): Stability {
  const answers = stage.facts.arches.map((arch) => stage.answer('base-stability', { arch }));
  const rocks = stage.facts.arches.some((arch) => stage.answer('base-rocking', { arch }) === true);
  if (rocks || answers.some((answer) => answer !== null && answer !== 'stable')) return 'unstable';
  return answers.length > 0 && answers.every((answer) => answer === 'stable') ? 'stable' : 'not-stated';
}

/** Contact in sibilants counts only on stable bases; on others the base is checked first. */
function judgeContact(
  stage: Stage,
  said: string,
  common: Pick<Outcome, 'value' | 'unit' | 'limit' | 'measurement'>,
): Outcome {
  const stability = stabilityOfBases(stage);
  if (stability === 'stable') {
    return fails({
      ...common,
      reason: `${said} on stable bases: the occlusal vertical dimension is too high or the front teeth stand too far forward. Correct it and trace again.`,
      ...jawRelationWayBack(stage),
    });
  }
  const why = stability === 'unstable' ? 'the bases are not stable' : 'the stability of the bases is not recorded';
  return cautions({
    ...common,
    reason: `${said}, but ${why}. Check the base first, then repeat the test.`,
    action: 'repeat',
  });
}

const sibilantTest: CheckRule = {
  code: 'sibilant-contact',
  version: 1,
  name: 'Contact in sibilants',
  milestones: VISITS,
  source: fromMemory('Silverman 1953'),
  cautionText: 'Check base stability first: a loose base clicks as well.',
  evaluate(stage) {
    const answer = stage.answer('sibilant-test');
    if (answer === null) return [];
    const common = { value: answer, limit: 'no contact', measurement: 'sibilant-test' };
    if (answer === 'contact' || answer === 'click') {
      return [judgeContact(stage, `Rims or teeth ${answer === 'click' ? 'click' : 'touch'} in sibilants`, common)];
    }
    if (answer === 'no-contact') return [passes({ ...common, reason: 'No contact in sibilants.' })];
    return [
      cautions({
        ...common,
        reason: `The patient has a ${String(answer)} in sibilants, without contact: look at the position of the front teeth and the palate before the height.`,
      }),
    ];
  },
};

const closestSpeakingSpace: CheckRule = {
  code: 'closest-speaking-space',
  version: 1,
  name: 'Closest speaking space',
  milestones: VISITS,
  source: published('Silverman 1953; more reliable than the rest distance, n=8 (PMID 10549213)'),
  cautionText: 'Read in rapid speech, with stable bases.',
  evaluate(stage) {
    const summary = stage.summary('closest-speaking-space');
    if (summary === null) return [];
    // A space above zero is judged with the usual ranges of all measurements.
    if (summary.median > 0) return [];
    return [
      judgeContact(stage, 'Closest speaking space 0 mm: contact', {
        value: 0,
        unit: 'mm',
        limit: 'above 0 mm',
        measurement: 'closest-speaking-space',
      }),
    ];
  },
};

export const SPEECH_RULES: readonly CheckRule[] = [sibilantTest, closestSpeakingSpace];

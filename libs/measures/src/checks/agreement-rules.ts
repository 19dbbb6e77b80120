import { commonPractice } from '../standing.js';
import { cautions, fails, passes, type CheckRule } from './rule.js';
import { jawRelationWayBack } from './vertical-rules.js';

const centricAgreement: CheckRule = {
  code: 'centric-relation-agreement',
  version: 1,
  name: 'Centric relation agrees with a new record',
  milestones: ['trial', 'placement'],
  source: commonPractice('common practice, no source found: up to about 2 mm after cure by clinical remount'),
  cautionText: 'Never grind a wrong jaw relation into place at trial.',
  evaluate(stage) {
    const answer = stage.answer('centric-relation-agreement');
    if (answer === null) return [];
    const common = { value: answer, limit: 'agrees', measurement: 'centric-relation-agreement' };
    if (answer === 'agrees')
      return [passes({ ...common, reason: 'The new centric relation record agrees with the mounting.' })];
    if (answer === 'small-difference') {
      return [
        cautions({
          ...common,
          reason: 'Small difference to the new centric relation record: clinical remount and grind, then check again.',
        }),
      ];
    }
    return [
      fails({
        ...common,
        reason: 'The new centric relation record differs from the mounting: the jaw relation has to be recorded again.',
        ...jawRelationWayBack(stage),
      }),
    ];
  },
};

const looks: CheckRule = {
  code: 'patient-acceptance',
  version: 1,
  name: 'Acceptance at trial placement',
  milestones: ['trial'],
  source: commonPractice(),
  cautionText: 'Record who decided: the patient, a companion with permission, or the legal representative.',
  evaluate(stage) {
    const answer = stage.answer('patient-acceptance');
    if (answer === null) return [];
    const decider = stage.answer('acceptance-decided-by');
    const common = { value: answer, limit: 'accepted, with who decided', measurement: 'patient-acceptance' };
    if (answer === 'refused') {
      return [
        fails({
          ...common,
          reason: 'The looks are refused: change the anterior set-up and try in again.',
          action: 'return-to-stage',
          trigger: 'looks-refused',
        }),
      ];
    }
    if (decider === null)
      return [
        cautions({ ...common, reason: 'Accepted, but who decided is not recorded. Record it before processing.' }),
      ];
    return [passes({ ...common, reason: `Accepted by: ${String(decider).replaceAll('-', ' ')}.` })];
  },
};

const occlusion: CheckRule = {
  code: 'occlusion',
  version: 1,
  name: 'Occlusion of the finished dentures',
  milestones: ['placement', 'review'],
  source: commonPractice('common practice, no source found: up to about 2 mm by clinical remount'),
  cautionText: 'Correct occlusion before relieving sore spots it causes.',
  evaluate(stage) {
    const answer = stage.answer('occlusion');
    if (answer === null) return [];
    const common = { value: answer, limit: 'even contact in centric relation', measurement: 'occlusion' };
    if (answer === 'balanced') return [passes({ ...common, reason: 'Even contact in centric relation.' })];
    if (answer === 'small-error')
      return [
        cautions({
          ...common,
          reason: 'Small occlusal error: clinical remount and grind.',
          trigger: 'occlusion-small-error',
        }),
      ];
    return [
      fails({
        ...common,
        reason: 'Large occlusal error: strip and reset the teeth or remake from the jaw relation.',
        action: 'return-to-stage',
        trigger: 'jaw-relation-wrong-after-cure',
      }),
    ];
  },
};

export const AGREEMENT_RULES: readonly CheckRule[] = [centricAgreement, looks, occlusion];

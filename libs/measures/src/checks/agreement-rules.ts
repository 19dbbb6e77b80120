import { commonPractice, fromMemory, projectDefault } from '../standing.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';
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
        ...jawRelationWayBack(stage, 'tracing-unusable'),
      }),
    ];
  },
};

const looks: CheckRule = {
  code: 'trial-acceptance',
  version: 1,
  name: 'Acceptance at trial placement',
  milestones: ['trial'],
  source: commonPractice(),
  cautionText: 'Record who decided: the patient, a companion with permission, or the legal representative.',
  evaluate(stage) {
    const answer = stage.answer('trial-acceptance');
    if (answer === null) return [];
    const decider = stage.answer('trial-decided-by');
    const common = { value: answer, limit: 'accepted, with who decided', measurement: 'trial-acceptance' };
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
  code: 'occlusion-at-placement',
  version: 1,
  name: 'Occlusion of the finished dentures',
  milestones: ['placement', 'review'],
  source: commonPractice('common practice, no source found: up to about 2 mm by clinical remount'),
  cautionText: 'Correct occlusion before relieving sore spots it causes.',
  evaluate(stage) {
    const answer = stage.answer('occlusion-at-placement');
    if (answer === null) return [];
    const common = { value: answer, limit: 'even contact in centric relation', measurement: 'occlusion-at-placement' };
    if (answer === 'balanced') return [passes({ ...common, reason: 'Even contact in centric relation.' })];
    if (answer === 'small-error')
      return [cautions({ ...common, reason: 'Small occlusal error: clinical remount and grind.' })];
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

const stomatitis: CheckRule = {
  code: 'stomatitis-gate',
  version: 1,
  name: 'Healthy mucosa before a final impression',
  milestones: ['examination', 'final-impression'],
  source: fromMemory('Newton 1962; the gate itself is common practice'),
  cautionText: 'Treat and condition first; the impression copies the swelling.',
  evaluate(stage) {
    return (['upper', 'lower'] as const).flatMap((arch): Outcome[] => {
      const answer = stage.answer('newton-stomatitis', { arch });
      if (answer === null) return [];
      const common = { value: answer, limit: 'type 0', measurement: 'newton-stomatitis', arch };
      if (answer === '0') return [passes({ ...common, reason: `No stomatitis in the ${arch} jaw.` })];
      if (answer === '1')
        return [
          cautions({
            ...common,
            reason: `Pinpoint stomatitis (type I) in the ${arch} jaw: better no final impression yet.`,
          }),
        ];
      const said = `Stomatitis type ${answer === '2' ? 'II' : 'III'} in the ${arch} jaw`;
      // At the examination nothing is lost yet: plan the healing; the gate closes at the impression.
      return stage.isAt('final-impression')
        ? [fails({ ...common, reason: `${said}: no final impression before the mucosa has healed.`, action: 'repeat' })]
        : [
            cautions({
              ...common,
              reason: `${said}: treat and condition; the final impression is closed until it has healed.`,
              action: 'go-on',
            }),
          ];
    });
  },
};

const retentionAndStability: CheckRule = {
  code: 'retention-and-stability',
  version: 1,
  name: 'Retention and stability of both dentures',
  milestones: ['placement', 'review'],
  source: projectDefault('Kapur 1967 grades, Olshan cut-off (from memory)'),
  cautionText: 'A reline answers a poor fit; a poor jaw relation is not relined away.',
  evaluate(stage) {
    const dropped = stage.facts.arches.flatMap((arch): Outcome[] => {
      const retention = stage.summary('kapur-retention', { arch });
      if (retention === null || retention.median > 0) return [];
      return [
        cautions({
          value: 0,
          unit: 'points',
          limit: 'above 0',
          measurement: 'kapur-retention',
          arch,
          reason: `The ${arch} denture drops when seated: look for the cause; reline or remake from the impression.`,
          action: 'return-to-stage',
          trigger: 'retention-poor',
        }),
      ];
    });
    const grades = (['upper', 'lower'] as const).flatMap((arch) =>
      ['kapur-retention', 'kapur-stability'].map((code) => stage.summary(code, { arch })?.median ?? null),
    );
    const known = grades.filter((grade) => grade !== null);
    if (known.length < 4) return dropped;
    const sum = known.reduce((total, grade) => total + grade, 0);
    const limit = stage.limit('kapur-sum-points');
    const common = {
      value: sum,
      unit: 'points',
      limit: `above ${String(limit.value)} of 10`,
      measurement: 'kapur-sum',
      source: limit.source,
    };
    return [
      ...dropped,
      sum > limit.value
        ? passes({
            ...common,
            reason: `Retention and stability of both dentures ${String(sum)} of 10: above ${String(limit.value)}.`,
          })
        : cautions({
            ...common,
            reason: `Retention and stability of both dentures ${String(sum)} of 10: not above ${String(limit.value)}.`,
            action: 'go-on',
          }),
    ];
  },
};

export const AGREEMENT_RULES: readonly CheckRule[] = [
  centricAgreement,
  looks,
  occlusion,
  stomatitis,
  retentionAndStability,
];

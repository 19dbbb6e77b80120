import { kapurOf } from '../scoring/kapur-grades.js';
import { commonPractice, fromMemory, projectDefault } from '../standing.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';

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
        ? [
            fails({
              ...common,
              reason: `${said}: no final impression before the mucosa has healed.`,
              action: 'return-to-stage',
              trigger: 'mucosa-not-healthy',
            }),
          ]
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

const tissueState: CheckRule = {
  code: 'tissue-state',
  version: 1,
  name: 'Mucosa healthy and at rest',
  milestones: ['examination', 'final-impression'],
  source: commonPractice(),
  cautionText: 'Old dentures out at least overnight; conditioner worn some days; heal first.',
  evaluate(stage) {
    return (['upper', 'lower'] as const).flatMap((arch): Outcome[] => {
      const answer = stage.answer('tissue-state', { arch });
      if (answer === null) return [];
      const common = { value: answer, limit: 'healthy and at rest', measurement: 'tissue-state', arch };
      const said = `The mucosa of the ${arch} jaw is ${String(answer)}`;
      if (answer === 'healthy') return [passes({ ...common, reason: `${said}.` })];
      return stage.isAt('final-impression')
        ? [
            fails({
              ...common,
              reason: `${said}: no final impression before it has healed.`,
              action: 'return-to-stage',
              trigger: 'mucosa-not-healthy',
            }),
          ]
        : [
            cautions({
              ...common,
              reason: `${said}: plan rest or conditioning before the final impression.`,
              action: 'go-on',
            }),
          ];
    });
  },
};

const retentionAndStability: CheckRule = {
  code: 'retention-and-stability',
  version: 2,
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
          trigger: 'poor-retention',
        }),
      ];
    });
    const score = kapurOf((code, where) => stage.summary(code, where));
    if (score === null) return dropped;
    const sum = score.total;
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

export const TISSUE_RULES: readonly CheckRule[] = [stomatitis, tissueState, retentionAndStability];

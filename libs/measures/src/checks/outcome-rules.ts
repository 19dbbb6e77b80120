import { DomainError } from '@archwright/kernel';
import { impactOf } from '../scoring/impact-answers.js';
import { impactForm } from '../scoring/oral-health-impact.js';
import { fromMemory } from '../standing.js';
import { cautions, passes, type CheckRule } from './rule.js';

const impact: CheckRule = {
  code: 'oral-health-impact',
  version: 1,
  name: 'Oral health impact is scored',
  milestones: ['examination', 'review'],
  source: fromMemory('Allen & Locker 2002; up to two missing answers: common practice, no source'),
  cautionText: 'High is worse. Never compared with another form or response scale.',
  evaluate(stage) {
    const common = { unit: 'points', measurement: 'oral-health-impact' };
    try {
      const score = impactOf(stage.readings);
      if (score === null) return [];
      const { items, scale } = impactForm(score.form);
      const most = items * scale.max;
      const filled =
        score.filledItems.length === 0 ? '' : ` Filled by the mean of their domain: ${score.filledItems.join(', ')}.`;
      return [
        passes({
          ...common,
          value: score.total,
          limit: `${String(items * scale.min)} to ${String(most)}`,
          reason: `Oral health impact ${String(Math.round(score.total * 10) / 10)} of ${String(most)} (${score.form}, ${score.version}).${filled}`,
        }),
      ];
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      return [
        cautions({ ...common, value: null, limit: 'answers of one form', reason: error.message, action: 'repeat' }),
      ];
    }
  },
};

export const OUTCOME_RULES: readonly CheckRule[] = [impact];

import { classByMandibularHeight } from '../scoring/edentulous-index.js';
import { published } from '../standing.js';
import { cautions, passes, type CheckRule } from './rule.js';

const CLASSES = ['I', 'II', 'III', 'IV'] as const;

/** The index is that of the worst criterion, so one criterion that is measured can only make it worse. */
const worstCriterion: CheckRule = {
  code: 'diagnostic-index',
  version: 1,
  name: 'Edentulous index against the height of the mandible',
  milestones: ['examination'],
  source: published('McGarry, J Prosthodont 1999;8:27'),
  cautionText: 'The class says how hard the treatment is, nothing about the person.',
  evaluate(stage) {
    const height = stage.summary('mandibular-bone-height');
    const stated = stage.answer('prosthodontic-diagnostic-index');
    if (height === null || stated === null) return [];
    const byHeight = classByMandibularHeight(height.median);
    const name = CLASSES[byHeight.class - 1] ?? '';
    const said = `Mandible ${String(height.median)} mm at its lowest point is class ${name} by itself`;
    const common = { value: stated, limit: `class ${name} or worse`, measurement: 'prosthodontic-diagnostic-index' };
    const rounded = byHeight.note === null ? '' : ` ${byHeight.note}`;
    return Number(stated) >= byHeight.class
      ? [passes({ ...common, reason: `${said}; the index is not better.${rounded}` })]
      : [
          cautions({
            ...common,
            reason: `${said}, and the index is stated better: the worst criterion decides.${rounded}`,
            action: 'correct-in-chair',
          }),
        ];
  },
};

export const INDEX_RULES: readonly CheckRule[] = [worstCriterion];

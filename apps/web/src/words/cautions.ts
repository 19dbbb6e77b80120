import { messages as english } from './en/cautions.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/cautions.js'), ar: () => import('./ar/cautions.js') });
const { caution } = said;

/** Words of what to mind with a patient at every visit. */
export const cautionWords = {
  ...caution,
  title: filled(caution.title, (name: string) => ({ name })),
  sentence: filled(caution.sentence, (n: number) => ({ n })),
  recorded: filled(caution.recorded, (by: string, when: string) => ({ by, when })),
  endedOn: filled(caution.endedOn, (when: string, reason: string) => ({ when, reason })),
};

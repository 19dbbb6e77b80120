import { messages as english } from './en/photographs.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/photographs.js'),
  ar: () => import('./ar/photographs.js'),
});
const { photographs } = said;

/** Words of the photographs of a visit. */
export const photographWords = {
  ...photographs,
  pictureOf: filled(photographs.pictureOf, (caption: string) => ({ caption })),
  remove: filled(photographs.remove, (caption: string) => ({ caption })),
  kept: filled(photographs.kept, (when: string, by: string) => ({ when, by })),
  removed: filled(photographs.removed, (caption: string, when: string, by: string, reason: string) => ({
    ...{ caption, when, by, reason },
  })),
};

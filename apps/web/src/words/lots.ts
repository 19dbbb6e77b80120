import { messages as english } from './en/lots.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/lots.js'), ar: () => import('./ar/lots.js') });

/** Words of the search for a lot of material. */
export const lotWords = {
  ...said.lot,
  found: filled(said.lot.found, (lot: string, n: number) => ({ lot, n })),
  of: filled(said.lot.of, (material: string, arches: string) => ({ material, arches })),
  recorded: filled(said.lot.recorded, (when: string, by: string) => ({ when, by })),
  used: {
    ...said.lot.used,
    saved: filled(said.lot.used.saved, (material: string, lot: string) => ({ material, lot })),
  },
  first: filled(said.lot.first, (n: number) => ({ n })),
};

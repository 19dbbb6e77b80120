import { messages as english } from './en/vertical.js';
import { filled, inLanguage } from './messages.js';
import { listed } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/vertical.js'), ar: () => import('./ar/vertical.js') });

const { columns, directions } = said.vertical;
const correction = filled(
  said.vertical.correction,
  (direction: 'lower' | 'raise', least: number, most: number, methods: string) => ({ direction, least, most, methods }),
);
const against = filled(said.vertical.against, (methods: string) => ({ methods }));

/** Words of the work-up of the vertical dimension. */
export const verticalWords = {
  ...said.vertical,
  columns: [columns.method, columns.value, columns.says, columns.weakness, columns.source],
  value: filled(said.vertical.value, (value: number, unit: string) => ({ value, unit })),
  source: filled(said.vertical.source, (text: string, standing: string) => ({ text, standing })),
  correction: (direction: 'lower' | 'raise', least: number, most: number, by: readonly string[]) =>
    correction(direction, least, most, listed(by)),
  against: (names: readonly string[]) => against(listed(names)),
  /** `direction` is the code of the turn. */
  step: filled(said.vertical.step, (direction: string, turns: number, mm: number, next: string) => ({
    direction,
    turns,
    mm,
    next,
  })),
  screw: filled(said.vertical.screw, (label: string) => ({ label })),
  /** `direction` is the code of the turn. */
  screwKnown: filled(said.vertical.screwKnown, (pitch: number, direction: string) => ({ pitch, direction })),
  directions: [
    { value: 'clockwise', label: directions.clockwise },
    { value: 'counter-clockwise', label: directions['counter-clockwise'] },
  ],
};

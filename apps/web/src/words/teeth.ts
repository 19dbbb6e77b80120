import { messages as english } from './en/teeth.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/teeth.js'), ar: () => import('./ar/teeth.js') });

const { columns, deciders } = said.teeth;

/** Words of the choice of teeth. */
export const teethWords = {
  ...said.teeth,
  columns: [columns.relation, columns.teeth, columns.range, columns.from, columns.against, columns.source],
  range: filled(said.teeth.range, (low: string, high: string) => ({ low, high })),
  from: filled(said.teeth.from, (name: string, mm: string) => ({ name, mm })),
  source: filled(said.teeth.source, (text: string, standing: string) => ({ text, standing })),
  scaleEnd: filled(said.teeth.scaleEnd, (mm: number) => ({ mm })),
  measuredName: filled(said.teeth.measuredName, (target: string, object: string, mm: string) => ({
    target,
    object,
    mm,
  })),
  remove: filled(said.teeth.remove, (n: number) => ({ n })),
  deciders: [
    { value: '', label: deciders.nobody },
    { value: 'patient', label: deciders.patient },
    { value: 'companion-with-permission', label: deciders['companion-with-permission'] },
    { value: 'legal-representative', label: deciders['legal-representative'] },
  ],
  kept: filled(said.teeth.kept, (when: string, by: string) => ({ when, by })),
};

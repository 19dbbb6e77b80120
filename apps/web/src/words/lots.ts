import { count } from './plural.js';

/** Words of the search for a lot of material. */
export const lotWords = {
  title: 'Who wears this lot?',
  start:
    'Enter the number of a lot as it stands on the container. Every case that it went into is listed, with whom to call.',
  found: (lot: string, n: number) =>
    n === 0 ? `No case has lot “${lot}” on record.` : `Lot “${lot}” went into ${count(n, 'case', 'cases')}.`,
  first: (n: number) => `Only the first ${String(n)} entries are counted and shown.`,
  link: 'Find a lot of material',
  lot: 'Lot',
  material: 'Material, if several makers use the number',
  find: 'Find',
  need: 'Enter a lot of up to 60 characters.',
  none: 'Nothing was recorded under this number. Check it against the container; spelling counts, capitals do not.',
  columns: {
    who: 'Patient',
    phone: 'Telephone',
    case: 'Case',
    what: 'Material',
    expires: 'Use by',
    recorded: 'Recorded',
  },
  noExpiry: 'none printed',
};

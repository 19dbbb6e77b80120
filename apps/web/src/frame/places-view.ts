import type { Role, SessionView } from '@archwright/contracts';

/** The workplaces of each role, first the one where its day begins. */
const PLACES: Record<Role, readonly ('desk' | 'bench' | 'chair')[]> = {
  'front-desk': ['desk', 'chair'],
  lab: ['bench'],
  clinician: ['chair', 'desk'],
  manager: ['desk', 'bench', 'chair'],
  administrator: ['desk'],
};

const ORDER = ['desk', 'bench', 'chair'] as const;
const PATH = { desk: '/desk', bench: '/bench', chair: '/chair' } as const;

export interface Place {
  key: (typeof ORDER)[number];
  to: (typeof PATH)[keyof typeof PATH];
}

export const placesOf = (role: Role): Place[] =>
  ORDER.filter((key) => PLACES[role].includes(key)).map((key) => ({ key, to: PATH[key] }));

export const homeOf = (role: Role): Place['to'] => PATH[PLACES[role][0] ?? 'desk'];

/** Which calls a screen may offer; the server decides again. */
export const may = {
  keepDesk: (role: Role): boolean => role === 'front-desk',
  openCases: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
  keepPatients: (role: Role): boolean => role === 'front-desk' || role === 'manager' || role === 'administrator',
  actOnVisits: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
  seeCalls: (role: Role): boolean => role === 'front-desk',
  seeVisits: (role: Role): boolean => role !== 'lab' && role !== 'administrator',
  seeCaughtMail: ({ role, isDemonstration }: SessionView): boolean => isDemonstration && role !== 'lab',
  treat: (role: Role): boolean => role === 'clinician',
  workAtBench: (role: Role): boolean => role === 'lab',
  acceptProposals: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
};

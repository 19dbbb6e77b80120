import type { Role, SessionView } from '@archwright/contracts';

const ORDER = ['desk', 'bench', 'chair', 'practice'] as const;
type PlaceKey = (typeof ORDER)[number];

/** The workplaces of each role, first the one where its day begins. */
const PLACES: Record<Role, readonly PlaceKey[]> = {
  'front-desk': ['desk', 'chair'],
  lab: ['bench'],
  clinician: ['chair', 'desk'],
  manager: ['practice', 'desk', 'bench', 'chair'],
  administrator: ['practice', 'desk', 'bench', 'chair'],
};

const PATH = { desk: '/desk', bench: '/bench', chair: '/chair', practice: '/practice' } as const;

export interface Place {
  key: PlaceKey;
  to: (typeof PATH)[PlaceKey];
}

export const placesOf = (role: Role): Place[] =>
  ORDER.filter((key) => PLACES[role].includes(key)).map((key) => ({ key, to: PATH[key] }));

export const homeOf = (role: Role): Place['to'] => PATH[PLACES[role][0] ?? 'desk'];

/**
 * Where an address leads that belongs to a workplace which is not this role's: to its own view of the same case, else to
 * where its day begins. Null when the address is fine.
 */
export function doorFor(role: Role, pathname: string): string | null {
  const [, place = '', kind = '', id = ''] = pathname.split('/');
  const isOwn = !ORDER.some((key) => key === place) || PLACES[role].some((key) => key === place);
  const isLab = role === 'lab';
  if (place === 'find' && isLab) return '/bench/find';
  if (kind === 'cases' && id !== '' && id !== 'new' && (place === 'bench' ? !isLab : !isOwn && isLab)) {
    return isLab ? `/bench/cases/${id}` : `/desk/cases/${id}`;
  }
  return isOwn ? null : homeOf(role);
}

/** Which calls a screen may offer; the server decides again. */
export const may = {
  keepDesk: (role: Role): boolean => role === 'front-desk',
  openCases: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
  keepPatients: (role: Role): boolean => role === 'front-desk' || role === 'manager' || role === 'administrator',
  actOnVisits: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
  seeCalls: (role: Role): boolean => role === 'front-desk' || role === 'administrator',
  seeVisits: (role: Role): boolean => role !== 'lab',
  seeCaughtMail: ({ role, isDemonstration }: SessionView): boolean => isDemonstration && role !== 'lab',
  seeFindings: (role: Role): boolean => role === 'clinician' || role === 'manager' || role === 'administrator',
  orderWork: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
  treat: (role: Role): boolean => role === 'clinician',
  workAtBench: (role: Role): boolean => role === 'lab',
  enterDisturbances: (role: Role): boolean => role === 'front-desk' || role === 'manager' || role === 'administrator',
  acceptProposals: (role: Role): boolean => role === 'front-desk' || role === 'clinician',
};

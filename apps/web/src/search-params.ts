/** Parameters that name a day. */
const DAYS = new Set(['on', 'from', 'until']);

/**
 * Search parameters arrive as anything: texts are kept, of the days those that are in the calendar. Everything else is
 * named as absent, since the router lays what it is given here over what it was given there.
 */
function texts<Key extends string>(
  ...keys: Key[]
): (raw: Record<string, unknown>) => Partial<Record<Key, string | undefined>> {
  return (raw) => {
    const kept: Partial<Record<Key, string | undefined>> = {};
    for (const key of keys) {
      const value = typeof raw[key] === 'number' ? String(raw[key]) : raw[key];
      const isUsable = typeof value === 'string' && value !== '' && (!DAYS.has(key) || isDay(value));
      if (isUsable) kept[key] = value;
      else if (key in raw) kept[key] = undefined;
    }
    return kept;
  };
}

function isDay(text: string): boolean {
  const ms = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(ms) && new Date(ms).toISOString().slice(0, 10) === text;
}

export const signInSearch = texts('next');
export const findSearch = texts('q');
export const daySearch = texts('on', 'clinic', 'by');
export const auditSearch = texts('by', 'deed', 'case', 'from', 'until');
export const pathSearch = texts('with');
export const setupSearch = texts('kind');
export const lotSearch = texts('lot', 'material');
export const offersSearch = texts('review');
/** `as` is `enquiry` where only the examination is asked for. */
export const newCaseSearch = texts('patient', 'as');
/** A name that was looked for in vain, and what the patient is wanted for: `case` or `enquiry`. */
export const newPatientSearch = texts('name', 'then');
export const benchSearch = texts('lab', 'from', 'centre', 'on');
/** One job, one case, or the list of a day. */
export const ticketSearch = texts('job', 'case', 'lab', 'on', 'centre');
export const remakeSearch = texts('from', 'until', 'cause', 'origin');
export const boardSearch = texts('on', 'clinic', 'clinician');
/** Time of one clinician that has become free; on a case's page the time that its visit left. */
export const freedSearch = texts('clinic', 'clinician', 'on', 'starts', 'ends', 'left');

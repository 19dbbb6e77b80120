/** Parameters that name a day. */
const DAYS = new Set(['on', 'from']);

/**
 * Search parameters arrive as anything: texts are kept, of the days those that are in the calendar; everything else is
 * treated as absent.
 */
function texts<Key extends string>(...keys: Key[]): (raw: Record<string, unknown>) => Partial<Record<Key, string>> {
  return (raw) => {
    const kept: Partial<Record<Key, string>> = {};
    for (const key of keys) {
      const value = typeof raw[key] === 'number' ? String(raw[key]) : raw[key];
      if (typeof value === 'string' && value !== '' && (!DAYS.has(key) || isDay(value))) kept[key] = value;
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
export const daySearch = texts('on', 'clinic');
export const newCaseSearch = texts('patient');
export const benchSearch = texts('lab', 'from', 'centre', 'on');
export const boardSearch = texts('on', 'clinic', 'clinician');

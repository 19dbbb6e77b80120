/** Search parameters arrive as anything: only texts are kept, everything else is treated as absent. */
function texts<Key extends string>(...keys: Key[]): (raw: Record<string, unknown>) => Partial<Record<Key, string>> {
  return (raw) => {
    const kept: Partial<Record<Key, string>> = {};
    for (const key of keys) {
      const value = raw[key];
      if (typeof value === 'string' && value !== '') kept[key] = value;
      if (typeof value === 'number') kept[key] = String(value);
    }
    return kept;
  };
}

export const signInSearch = texts('next');
export const findSearch = texts('q');
export const daySearch = texts('on', 'clinic');
export const newCaseSearch = texts('patient');
export const benchSearch = texts('lab', 'from', 'centre', 'on');
export const boardSearch = texts('on', 'clinic', 'clinician');

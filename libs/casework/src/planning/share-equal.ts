/**
 * `next` with every part that equals the same part of `base` taken from `base`: a search that keeps what it worked out by
 * the identity of its tables finds it again. Both are plain values, typed arrays and maps.
 */
export function shareEqual<Value>(base: Value, next: Value): Value {
  return shared(base, next) as Value;
}

function shared(base: unknown, next: unknown): unknown {
  if (Object.is(base, next)) return base;
  if (isTable(next)) return isTable(base) && sameTable(base, next) ? base : next;
  if (Array.isArray(next)) return Array.isArray(base) ? sharedList(base, next) : next;
  if (next instanceof Map) return base instanceof Map ? sharedMap(base, next) : next;
  if (isRecord(next) && isRecord(base)) return sharedRecord(base, next);
  return next;
}

/** Every kind of typed array of whole numbers: one that is overlooked is a record of thousands of entries. */
type Table = Int8Array | Uint8Array | Int16Array | Uint16Array | Int32Array | Uint32Array;

const isTable = (value: unknown): value is Table => ArrayBuffer.isView(value) && !(value instanceof DataView);

function sameTable(one: Table, other: Table): boolean {
  if (one.constructor !== other.constructor || one.length !== other.length) return false;
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false;
  return true;
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

function sharedList(base: readonly unknown[], next: readonly unknown[]): readonly unknown[] {
  const items = next.map((item, index) => shared(base[index], item));
  return items.length === base.length && items.every((item, index) => item === base[index]) ? base : items;
}

function sharedMap(base: ReadonlyMap<unknown, unknown>, next: ReadonlyMap<unknown, unknown>): unknown {
  const entries = [...next].map(([key, value]) => [key, shared(base.get(key), value)] as const);
  const isSame =
    entries.length === base.size && entries.every(([key, value]) => base.has(key) && base.get(key) === value);
  return isSame ? base : new Map(entries);
}

function sharedRecord(base: Record<string, unknown>, next: Record<string, unknown>): unknown {
  const entries = Object.entries(next).map(([key, value]) => [key, shared(base[key], value)] as const);
  const isSame = entries.length === Object.keys(base).length && entries.every(([key, value]) => base[key] === value);
  return isSame ? base : Object.fromEntries(entries);
}

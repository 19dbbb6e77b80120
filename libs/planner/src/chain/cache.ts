/**
 * Keeps what depends on calendars, paths and bookings only, by the identity of the objects and arrays it was made of.
 *
 * Hand the same cache to later searches and pass unchanged resources, operations and tables as the same objects; after
 * a booking pass a new array for what it touched. Never change an array in place.
 */
export class ChainCache {
  private readonly ids = new WeakMap<object, number>();
  private readonly made = new Map<string, unknown>();
  private lastId = 0;

  /** Number of an object; 0 for `null`. */
  id(object: object | null): number {
    if (object === null) return 0;
    let id = this.ids.get(object);
    if (id === undefined) {
      id = ++this.lastId;
      this.ids.set(object, id);
    }
    return id;
  }

  /** What `make` gave for this key; one key always stands for one type. */
  get<T>(key: string, make: () => T): T {
    let value = this.made.get(key) as T | undefined;
    if (value === undefined) {
      // Old versions of bookings never come back; dropping everything now and then bounds the memory.
      if (this.made.size >= 4096) this.made.clear();
      value = make();
      this.made.set(key, value);
    }
    return value;
  }
}

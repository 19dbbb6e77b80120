/** Entries of one generation: enough for every set and table of fifty clinics. */
const GENERATION = 8192;

/**
 * Keeps what depends on calendars, paths and bookings only, by the identity of the objects and arrays it was made of.
 *
 * Hand the same cache to later searches and pass unchanged resources and tables as the same arrays; after a booking
 * pass a new array for what it touched. Never change an array in place.
 */
export class ChainCache {
  private readonly ids = new WeakMap<object, number>();
  private readonly idsByContent = new Map<string, number>();
  private made = new Map<string, unknown>();
  private older = new Map<string, unknown>();
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

  /** Number of what an object says, the same for all objects that `describe` gives the same words for. */
  idOfContent(object: object, describe: () => string): number {
    let id = this.ids.get(object);
    if (id === undefined) {
      const content = describe();
      id = this.idsByContent.get(content) ?? ++this.lastId;
      this.idsByContent.set(content, id);
      this.ids.set(object, id);
    }
    return id;
  }

  /** What `make` gave for this key; one key always stands for one type. */
  get<T>(key: string, make: () => T): T {
    let value = this.made.get(key) as T | undefined;
    if (value === undefined) {
      value = (this.older.get(key) as T | undefined) ?? make();
      this.made.set(key, value);
      // Old versions of bookings never come back: what nobody asked for during a whole generation is dropped.
      if (this.made.size >= GENERATION) {
        this.older = this.made;
        this.made = new Map();
      }
    }
    return value;
  }
}

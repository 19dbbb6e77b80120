import type { Search } from '@archwright/planner';
import { readInstance, type InstanceFormat, type Plan, type StreamSettings } from './read-instance.js';

/** An instance and the searches of it, as plain values that can go to a thread. */
export interface StreamsRequest {
  readonly text: string;
  readonly format: InstanceFormat | null;
  readonly streams: readonly StreamSettings[];
}

/** Where searches stand after some epochs. */
export interface StreamsState {
  readonly lowerBound: number;
  /** Infinity while there is no plan. */
  readonly makespan: number;
  /** The best plan: of equally short ones the first to be found, of those the one of the first stream. */
  readonly plan: Plan | null;
  readonly foundAt: number;
  readonly stream: number;
}

interface Stream {
  readonly search: Search<Plan>;
  readonly number: number;
  foundAt: number;
}

/** Independent searches of one instance, each a function of seed, stream and epochs, wherever it runs. */
export class Streams {
  private readonly streams: readonly Stream[];
  private epochs = 0;

  /** @throws {InstanceFileError} naming line and reason */
  constructor({ text, format, streams }: StreamsRequest) {
    const instance = readInstance(text, format);
    this.streams = streams.map((settings) => ({
      search: instance.search(settings),
      number: settings.stream,
      foundAt: 0,
    }));
  }

  /** Runs every stream on until it has had so many epochs in all. */
  advance(epochs: number): StreamsState {
    for (const stream of this.streams) {
      const { search } = stream;
      for (let epoch = this.epochs + 1; epoch <= epochs; epoch++) {
        const before = search.makespan;
        search.runEpoch();
        if (search.makespan < before) stream.foundAt = epoch;
      }
    }
    this.epochs = epochs;
    return bestOf(
      this.streams.map(({ search, number, foundAt }) => ({
        lowerBound: search.lowerBound,
        makespan: search.makespan,
        plan: search.best,
        foundAt,
        stream: number,
      })),
    );
  }
}

/** What several know together; the order in which they are given plays no part. */
export function bestOf(states: readonly StreamsState[]): StreamsState {
  const best = states.reduce((one, other) => (isBetter(other, one) ? other : one));
  return { ...best, lowerBound: Math.max(...states.map(({ lowerBound }) => lowerBound)) };
}

function isBetter(one: StreamsState, other: StreamsState): boolean {
  if (one.makespan !== other.makespan) return one.makespan < other.makespan;
  return one.foundAt === other.foundAt ? one.stream < other.stream : one.foundAt < other.foundAt;
}

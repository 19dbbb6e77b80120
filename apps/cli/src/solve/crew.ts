import { ThreadCrew, threadEntry } from '@archwright/jobs';
import { bestOf, Streams, type StreamsRequest, type StreamsState } from './streams.js';

/** Longest stretch between two looks at the clock; an instance that needs longer for an epoch is too large. */
const MOST_STRETCH_MS = 3_600_000;

/** Whoever runs the streams of a search. */
export interface Crew {
  /** Runs every stream on until it has had so many epochs in all. */
  advance(epochs: number): Promise<StreamsState>;
  close(): Promise<void>;
}

/**
 * Streams dealt out to threads in turn; one thread is the present one. What is found is the same for any number of them.
 *
 * @throws {InstanceFileError} naming line and reason
 */
export async function openCrew(request: StreamsRequest, threads: number): Promise<Crew> {
  if (threads === 1) {
    const streams = new Streams(request);
    return { advance: (epochs) => Promise.resolve(streams.advance(epochs)), close: () => Promise.resolve() };
  }
  const entry = threadEntry('solve-thread', import.meta.url);
  const crew = new ThreadCrew({ entry, size: threads, withinMs: MOST_STRETCH_MS });
  const streamsOf = (member: number) => request.streams.filter((_each, number) => number % threads === member);
  await crew.all('open', (member) => ({ ...request, streams: streamsOf(member) }));
  return {
    advance: async (epochs) => bestOf((await crew.all('advance', () => epochs)) as StreamsState[]),
    close: () => crew.close(),
  };
}

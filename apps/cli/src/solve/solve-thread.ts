import { serveTasks } from '@archwright/jobs';
import { Streams, type StreamsRequest, type StreamsState } from './streams.js';

let streams: Streams | null = null;

serveTasks({
  open: (request: StreamsRequest): null => {
    streams = new Streams(request);
    return null;
  },
  advance: (epochs: number): StreamsState => {
    if (streams === null) throw new Error('No instance is open on this thread.');
    return streams.advance(epochs);
  },
});

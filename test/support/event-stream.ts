import { changeNews, type ChangeNews } from '@archwright/contracts';

export interface Heard extends ChangeNews {
  /** The position to go on from. */
  readonly id: string;
}

/** A listener to the stream of changes, as a browser listens. */
export interface EventStream {
  readonly heard: readonly Heard[];
  /** Settles when the service ends the stream. */
  readonly ended: Promise<void>;
  close(): void;
}

/** @param from the position of an earlier message, as a browser that lost its line sends it */
export async function listen(url: string, cookie: string, from?: string): Promise<EventStream> {
  const abort = new AbortController();
  const answer = await fetch(`${url}/changes`, {
    headers: { cookie, accept: 'text/event-stream', ...(from === undefined ? {} : { 'last-event-id': from }) },
    signal: abort.signal,
  });
  if (!answer.ok || answer.body === null) throw new Error(`The stream was answered ${String(answer.status)}.`);
  const heard: Heard[] = [];
  return {
    heard,
    ended: readAll(answer.body, heard).catch((error: unknown) => {
      if (!abort.signal.aborted) throw error;
    }),
    close: () => {
      abort.abort();
    },
  };
}

async function readAll(body: ReadableStream<Uint8Array>, heard: Heard[]): Promise<void> {
  let rest = '';
  for await (const text of body.pipeThrough(new TextDecoderStream())) {
    const messages = (rest + text).split('\n\n');
    rest = messages.pop() ?? '';
    for (const message of messages) {
      const data = /^data: (.*)$/m.exec(message)?.[1];
      if (data === undefined) continue;
      heard.push({ ...changeNews.parse(JSON.parse(data)), id: /^id: (.*)$/m.exec(message)?.[1] ?? '' });
    }
  }
}

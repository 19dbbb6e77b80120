import type { Answered, Asked } from './find-lines-worker.js';

/** Finds the lines on a thread of its own, which ends with its answer or when it is called off. */
export function askWorker(asked: Asked, signal: AbortSignal): Promise<Answered> {
  const worker = new Worker(new URL('./find-lines-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Answered>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Answered>) => {
      resolve(data);
    };
    worker.onerror = (event) => {
      reject(new Error(event.message));
    };
    signal.addEventListener('abort', () => {
      reject(new DOMException('Called off.', 'AbortError'));
    });
    worker.postMessage(asked);
  }).finally(() => {
    worker.terminate();
  });
}

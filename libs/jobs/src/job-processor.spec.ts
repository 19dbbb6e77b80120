import { currentRequestId } from '@archwright/platform';
import type { Job } from 'bullmq';
import { JobProcessor, type JobHandler } from './job-processor.js';

class Counting extends JobProcessor {
  readonly seen: { data: unknown; requestId: string | null }[] = [];
  protected readonly handlers: JobHandler[] = [
    {
      name: 'count',
      run: (data) => {
        this.seen.push({ data, requestId: currentRequestId() });
        return Promise.resolve();
      },
    },
  ];
}

const aJob = (data: object, name = 'count') => ({ name, data }) as unknown as Job;

describe('a job', () => {
  it('is part of the request that caused it, which its payload does not show', async () => {
    const processor = new Counting();
    await processor.process(aJob({ number: 1, requestId: 'r-1' }));
    await processor.process(aJob({ number: 2 }));
    expect(processor.seen).toEqual([
      { data: { number: 1 }, requestId: 'r-1' },
      { data: { number: 2 }, requestId: null },
    ]);
  });

  it('is refused when nobody here knows it', async () => {
    await expect(new Counting().process(aJob({}, 'other'))).rejects.toThrow('"other"');
  });
});

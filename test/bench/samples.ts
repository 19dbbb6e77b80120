import { ms, percentile } from './figures.js';

export interface Sample {
  readonly wallMs: number;
  /** Processor time of all threads of this process, the collector's included; what an idle core would take at most. */
  readonly cpuMs: number | null;
}

export function timed<Result>(work: () => Result): { readonly result: Result; readonly sample: Sample } {
  const cpu = process.cpuUsage();
  const from = performance.now();
  const result = work();
  const wallMs = performance.now() - from;
  const { user, system } = process.cpuUsage(cpu);
  return { result, sample: { wallMs, cpuMs: (user + system) / 1000 } };
}

export async function waited(work: () => Promise<unknown>): Promise<Sample> {
  const from = performance.now();
  await work();
  return { wallMs: performance.now() - from, cpuMs: null };
}

export const SAMPLE_HEAD = [
  'what',
  'first, ms',
  'p50, ms',
  'p95, ms',
  'p99, ms',
  'processor p50, ms',
  'p95, ms',
  'p99, ms',
  'runs',
];

/** One line under {@link SAMPLE_HEAD}; the first sample, taken before the engine has compiled anything, stands apart. */
export function sampleRow(what: string, samples: readonly Sample[]): string[] {
  const [first, ...later] = samples;
  const cpu = later.flatMap(({ cpuMs }) => cpuMs ?? []);
  const shares = (values: readonly number[]) =>
    [0.5, 0.95, 0.99].map((share) => (values.length === 0 ? '' : ms(percentile(values, share))));
  return [
    what,
    ms(first?.wallMs ?? NaN),
    ...shares(later.map(({ wallMs }) => wallMs)),
    ...shares(cpu),
    String(samples.length),
  ];
}

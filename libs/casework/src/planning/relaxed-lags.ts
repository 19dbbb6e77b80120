import type { CaseChain, PlanRequest, TimeSpan } from '@archwright/protocol';

type LagOverrides = PlanRequest['lagOverrides'];

/** A longest wait of the chain: between visits, or inside laboratory work. */
export interface LongestWait {
  readonly code: string;
  readonly title: string;
  /** Stage that has to be reached in time. */
  readonly towards: string;
  readonly max: TimeSpan;
}

/** Every longest wait that a person could agree to lengthen. */
export function longestWaits(chain: CaseChain): LongestWait[] {
  const stageOf = (code: string): string => chain.steps.find((step) => step.code === code)?.beforeStage ?? code;
  const between = chain.lags.flatMap(({ code, title, to, max }) =>
    max === null ? [] : [{ code, title, towards: stageOf(to), max }],
  );
  const inside = chain.steps.flatMap((step) =>
    step.after.flatMap(({ lag, max }) =>
      lag === null || max === null ? [] : [{ code: lag, title: step.title, towards: step.beforeStage, max }],
    ),
  );
  return [...between, ...inside];
}

/** The limits with some waits longer, by days of their own unit; codes that name no longest wait change nothing. */
export function withLongerWaits(
  chain: CaseChain,
  overrides: LagOverrides,
  extraWaitDays: Readonly<Record<string, number>>,
): LagOverrides {
  const longer = longestWaits(chain)
    .filter(({ code }) => extraWaitDays[code] !== undefined)
    .map(({ code, max }) => [code, { ...overrides[code], max: lengthened(max, extraWaitDays[code] ?? 0) }] as const);
  return { ...overrides, ...Object.fromEntries(longer) };
}

function lengthened(span: TimeSpan, days: number): TimeSpan {
  return { ...span, amount: span.amount + (span.unit === 'minutes' ? days * 1440 : days) };
}

import { Temporal } from 'temporal-polyfill';
import { addDays } from '@archwright/calendar';
import type { CaseChain } from '@archwright/protocol';
import type { OrganisationSettings } from '@archwright/records';

type Stage = CaseChain['stages'][number];

/** A later check with the date from which it is due. */
export interface DueCheck {
  readonly stage: string;
  readonly dueOn: string;
}

/** Whether a stage comes again and again after placement. */
export const isRecall = ({ milestones }: Pick<Stage, 'milestones'>): boolean => milestones.includes('recall');

/** The checks that a placement makes due on their own dates; those booked with the chain are not among them. */
export function checksAfter(
  chain: CaseChain,
  delivery: string,
  on: string,
  settings: OrganisationSettings,
): DueCheck[] {
  return chain.stages
    .filter(({ chained }) => !chained)
    .flatMap((stage): DueCheck[] => {
      const lag = chain.lags.find(({ from, to }) => from === delivery && to === stage.code);
      return lag?.min?.unit === 'calendar-days'
        ? [{ stage: stage.code, dueOn: dueAfter(stage, lag.min.amount, on, settings) }]
        : [];
    });
}

/** The next recall after one on a date; null for a check that comes once. */
export function nextRecall(
  chain: CaseChain,
  code: string,
  on: string,
  settings: OrganisationSettings,
): DueCheck | null {
  const stage = chain.stages.find((each) => each.code === code);
  const wait = chain.lags.find(({ to }) => to === code)?.min;
  if (stage === undefined || !isRecall(stage) || wait?.unit !== 'calendar-days') return null;
  return { stage: code, dueOn: dueAfter(stage, wait.amount, on, settings) };
}

function dueAfter(stage: Stage, pathDays: number, on: string, { recallMonths = null }: OrganisationSettings): string {
  if (!isRecall(stage) || recallMonths === null) return addDays(on, pathDays);
  return Temporal.PlainDate.from(on).add({ months: recallMonths }).toString();
}

/** The rule and who stands behind it, as people read it beside a due date. */
export function recallRuleWords({ recallMonths = null }: OrganisationSettings): string {
  if (recallMonths !== null) return `Recall every ${String(recallMonths)} months: this practice's own rule.`;
  return "Recall as the treatment path says, 12 months unless it was changed: common practice, no source. Earlier for implants, a dry mouth or stomatitis is the clinician's decision.";
}

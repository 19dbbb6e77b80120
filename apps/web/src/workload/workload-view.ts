import type { WorkloadRunView } from '@archwright/contracts';
import { loadClass, type LoadClass } from '../bench/bench-view.js';
import { axisDate, dateAndTime } from '../time/wording.js';
import { workloadWords as words } from '../words/workload.js';

type Proposal = WorkloadRunView['proposals'][number];

export const isUnderWay = (run: WorkloadRunView | null): boolean => run?.state === 'asked' || run?.state === 'running';

/** One figure as it is and as it would be. */
export interface Effect {
  name: string;
  now: number;
  then: number;
}

interface DayCell {
  on: string;
  /** By what the day would hold; null where nothing changes. */
  load: LoadClass | null;
  text: string;
  label: string;
}

export interface ProposalCard {
  id: string;
  version: number;
  title: string;
  sentence: string;
  certainty: string;
  effects: Effect[];
  days: { heads: { on: string; label: string }[]; rows: { id: string; name: string; cells: DayCell[] }[] };
  /** Visits that move; only the front desk accepts a plan that has any. */
  visits: { key: string; caseId: string; caseNumber: string; what: string; when: string }[];
  moves: { key: string; caseId: string; caseNumber: string; title: string; where: string; when: string }[];
  overtime: string[];
  /** Null while it is open. */
  decided: string | null;
}

export const proposalCards = ({ proposals }: WorkloadRunView, zone: string, today: string): ProposalCard[] =>
  proposals.map((proposal) => ({
    id: proposal.id,
    version: proposal.version,
    title: proposal.title,
    sentence: proposal.sentence,
    certainty: proposal.certainty,
    effects: effectsOf(proposal),
    days: daysOf(proposal),
    visits: proposal.visits.map((visit) => ({
      key: `${visit.caseId} ${visit.title} ${visit.fromAt}`,
      caseId: visit.caseId,
      caseNumber: visit.caseNumber,
      what: words.visit(visit.title, visit.clinicName),
      when: words.fromTo(dateAndTime(visit.fromAt, visit.zone, today), dateAndTime(visit.toAt, visit.zone, today)),
    })),
    moves: proposal.moves.map((move) => ({
      key: `${move.caseId} ${move.title} ${move.fromAt}`,
      caseId: move.caseId,
      caseNumber: move.caseNumber,
      title: move.title,
      where: move.laboratory === null ? move.workCentre : words.where(move.laboratory, move.workCentre),
      when: words.fromTo(dateAndTime(move.fromAt, zone, today), dateAndTime(move.toAt, zone, today)),
    })),
    overtime: proposal.overtime.map(({ workCentre, on, minutes }) => words.overtime(workCentre, axisDate(on), minutes)),
    decided: proposal.state === 'open' ? null : words.state[proposal.state],
  }));

export function effectsOf({ before, after }: Pick<Proposal, 'before' | 'after'>): Effect[] {
  return [
    { name: words.lateCases, now: before.lateCases, then: after.lateCases },
    { name: words.lateMinutes, now: before.lateMinutes, then: after.lateMinutes },
    { name: words.fullDays, now: before.fullDays, then: after.fullDays },
  ];
}

/** Only days and work centres whose load changes, as a table of them all. */
function daysOf({ days }: Proposal): ProposalCard['days'] {
  const dates = [...new Set(days.map(({ on }) => on))].sort();
  const centres = new Map(days.map(({ workCentreId, workCentre }) => [workCentreId, workCentre]));
  return {
    heads: dates.map((on) => ({ on, label: axisDate(on) })),
    rows: [...centres].map(([id, name]) => ({
      id,
      name,
      cells: dates.map((on): DayCell => {
        const day = days.find((each) => each.workCentreId === id && each.on === on);
        if (day === undefined) return { on, load: null, text: '', label: '' };
        const { beforeMinutes, afterMinutes, openMinutes } = day;
        const change = words.day(beforeMinutes, afterMinutes, openMinutes);
        return {
          on,
          load: loadClass(afterMinutes, openMinutes),
          text: words.fromTo(beforeMinutes, afterMinutes),
          label: words.dayOf(name, axisDate(on), change),
        };
      }),
    })),
  };
}

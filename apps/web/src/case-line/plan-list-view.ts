import type { CasePlan } from '@archwright/contracts';
import { dateAndTime, timeOfDay, zoneNote } from '../time/wording.js';
import { archWords, lineWords } from '../words/line.js';
import { toldWords } from '../words/told.js';

export interface PlanRow {
  key: string;
  /** Orders the rows. */
  at: string;
  when: string;
  what: string;
  where: string;
  kind: 'visit' | 'lab' | 'courier';
  againstWishes: string[];
}

/** A plan as rows in order of time: the equal of its drawing. */
export function planRows(plan: CasePlan, zone: string, today: string, viewer: string): PlanRow[] {
  const rows: PlanRow[] = [
    ...plan.visits.map((visit) => ({
      at: visit.startsAt,
      key: `v ${visit.startsAt} ${visit.title}`,
      when: [
        `${dateAndTime(visit.startsAt, visit.zone, today)}–${timeOfDay(visit.endsAt, visit.zone)}`,
        zoneNote(visit.startsAt, visit.zone, viewer),
      ]
        .filter(Boolean)
        .join(' '),
      what: visit.title,
      where: lineWords.visitWhere(
        visit.clinicName,
        visit.chairId === null ? lineWords.atHome : visit.chairLabel,
        visit.clinicianName,
      ),
      kind: 'visit' as const,
      againstWishes: visit.againstWishes.map(({ told }) => toldWords(told)),
    })),
    ...plan.labSteps.map((step) => ({
      at: step.startsAt,
      key: `l ${step.startsAt} ${step.code} ${step.arches.join()}`,
      when: `${dateAndTime(step.startsAt, zone, today)} – ${dateAndTime(step.endsAt, zone, today)}`,
      what: lineWords.stepWhat(step.title, archWords(step.arches)),
      where: lineWords.stepWhere(step.laboratoryName, step.placeLabel),
      kind: 'lab' as const,
      againstWishes: [],
    })),
    ...plan.transports.map((courier) => ({
      at: courier.departsAt,
      key: `c ${courier.departsAt} ${courier.direction}`,
      when: `${dateAndTime(courier.departsAt, zone, today)} – ${dateAndTime(courier.arrivesAt, zone, today)}`,
      what: lineWords.courier[courier.direction],
      where: '',
      kind: 'courier' as const,
      againstWishes: [],
    })),
  ];
  return rows.sort((a, b) => a.at.localeCompare(b.at));
}

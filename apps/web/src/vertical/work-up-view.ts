import type { StageView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import { verticalWorkUp, type Indication, type ScrewStep, type VerticalWorkUp } from '@archwright/measures';
import { judgedNow, type Judged } from '../stage/finding-view.js';
import { spelled } from '../words/plural.js';
import { verticalWords as words } from '../words/vertical.js';

export interface WorkUpRow {
  code: string;
  name: string;
  value: string;
  says: Indication;
  weakness: string;
  source: string;
}

export interface WorkUpView {
  bases: VerticalWorkUp['bases'];
  rows: WorkUpRow[];
  note: string;
  /** Null when nothing asks for one. */
  correction: { sentence: string; against: string | null; steps: string[]; repeat: readonly string[] } | null;
}

/** The methods over what is recorded and typed, or why they can't be put side by side. */
export function workUpOf(view: StageView, judged: Judged): WorkUpView | { problem: string } {
  try {
    const screw = view.tracingKit?.screw;
    const given = { ...judgedNow(view, judged), overlay: view.overlay };
    return shaped(verticalWorkUp(screw ? { ...given, screw } : given));
  } catch (error) {
    if (error instanceof DomainError) return { problem: error.message };
    throw error;
  }
}

function shaped({ bases, lines, correction, note }: VerticalWorkUp): WorkUpView {
  const nameOf = (code: string) => lines.find((line) => line.code === code)?.name ?? spelled(code);
  return {
    bases,
    note,
    rows: lines.map(({ code, name, value, unit, indicates, weakness, source, standing }) => ({
      code,
      name,
      value: valueText(value, unit),
      says: indicates,
      weakness,
      source: words.source(source, standing),
    })),
    correction:
      correction === null
        ? null
        : {
            sentence: words.correction(
              correction.direction,
              Math.abs(correction.leastMm),
              Math.abs(correction.mostMm),
              correction.supportedBy.map(nameOf),
            ),
            against:
              correction.contradictedBy.length === 0 ? null : words.against(correction.contradictedBy.map(nameOf)),
            steps: correction.screwSteps.map(stepText),
            repeat: correction.repeatAfterwards,
          },
  };
}

function valueText(value: number | string | null, unit: string | null): string {
  if (value === null) return words.notRecorded;
  if (typeof value === 'string') return spelled(value);
  return words.value(Math.round(value * 10) / 10, unit ?? '').trim();
}

const stepText = ({ direction, turns, skinMmSoFar, then }: ScrewStep): string =>
  words.step(direction, Math.round(turns * 100) / 100, Math.round(skinMmSoFar * 10) / 10, then);

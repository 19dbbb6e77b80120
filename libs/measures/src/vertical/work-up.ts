import { checkSettings, type PracticeOverlay } from '../checks/settings.js';
import { stabilityOfBases, type Stability } from '../checks/speech-rules.js';
import { Stage, type StageFacts } from '../checks/stage.js';
import { measurementByCode } from '../catalogue/catalogue.js';
import type { NumberMeasurement } from '../measurement.js';
import type { Reading } from '../readings/reading.js';
import { tidy } from '../readings/summary.js';
import type { ClosedRange, Standing } from '../standing.js';
import { screwSteps, type BearingScrew, type ScrewStep } from './bearing-screw.js';
import { differenceOfSummaries, lowerToMiddleThirdPercent } from './derived.js';

/** What a method says about the occlusal vertical dimension in force. */
export type Indication = 'lower' | 'raise' | 'keep' | 'unclear';

/** One method beside the others, with what speaks against it. */
export interface WorkUpLine {
  readonly code: string;
  readonly name: string;
  /** Null when it was not captured. */
  readonly value: number | string | null;
  readonly unit: string | null;
  readonly indicates: Indication;
  readonly weakness: string;
  readonly source: string;
  readonly standing: Standing;
}

export interface Correction {
  readonly direction: 'lower' | 'raise';
  /** Change of the occlusal vertical dimension, mm, signed: the least and the most that the values support. */
  readonly leastMm: number;
  readonly mostMm: number;
  readonly supportedBy: readonly string[];
  readonly contradictedBy: readonly string[];
  /** Empty without a kit. */
  readonly screwSteps: readonly ScrewStep[];
  readonly repeatAfterwards: readonly string[];
}

export interface VerticalWorkUp {
  /** Before they are stable no contact in speech is believed. */
  readonly bases: Stability;
  readonly lines: readonly WorkUpLine[];
  /** Null when nothing asks for one, when the methods disagree, or when the bases are not stable. */
  readonly correction: Correction | null;
  readonly note: string;
}

/** What has to be done again after every change of the occlusal vertical dimension. */
export const REPEAT_AFTER_CHANGE: readonly string[] = [
  'occlusal vertical dimension, three readings on the same marks',
  'sibilant test and closest speaking space, on stable bases',
  'tracing and every other centric relation record: those made before are void',
  'occlusal plane, midline and lip support',
];

/** Said while the stability of the bases is not recorded. */
const SPEECH_WAITS = 'Speech is not counted before the stability of the bases is recorded.';

/** A first small lowering when speech alone asks for it: no published relation of contact and millimetres exists. */
const SPEECH_STEP_MM: ClosedRange = { min: -2, max: -1 };

const WEAKNESS: Readonly<Record<string, string>> = {
  'interocclusal-rest-distance':
    'The flat 2 to 4 mm is doubted: larger in class II, smaller in class III (Hajimahmoudi 2018); rest itself shifts when dentures are inserted.',
  'closest-speaking-space':
    'Depends on stable bases and on front tooth position; reliability was shown in 8 people only (PMID 10549213).',
  'sibilant-test': 'A loose base clicks as well; front teeth too far forward touch at a right height.',
  'lower-to-middle-third': 'Faces differ; a lost chin line or beard hides the mark.',
  'swallow-vertical-dimension':
    'Depends on the softness of the wax and on the patient’s habit; gives other values than speech (Cranio 2001;19:230, n=15).',
  'change-of-occlusal-vertical-dimension': 'Old dentures are worn and sunk: what is familiar is often too low.',
};

/**
 * The methods for the occlusal vertical dimension side by side, and a correction that they support together.
 * The vertical dimension is only ever changed by the clinician.
 *
 * @throws {DifferentMethodError} when landmarks differ between the values that are compared
 */
export function verticalWorkUp(input: {
  readonly readings: readonly Reading[];
  readonly facts: StageFacts;
  readonly overlay?: PracticeOverlay | null;
  readonly screw?: BearingScrew;
}): VerticalWorkUp {
  const stage = new Stage(input.readings, input.facts, checkSettings(input.overlay ?? null));
  const lines = [
    restLine(stage),
    speakingSpaceLine(stage),
    sibilantLine(stage),
    thirdsLine(stage),
    swallowLine(stage),
    oldDentureLine(stage),
  ];
  const bases = stabilityOfBases(stage);
  const nothing = (note: string): VerticalWorkUp => ({ bases, lines, correction: null, note });
  if (bases === 'unstable') {
    return nothing('The bases are not stable: make them stable before any value is believed.');
  }
  const speakers = lines.filter((line) => line.indicates !== 'unclear');
  const asking = lines.filter((line) => line.indicates === 'lower' || line.indicates === 'raise');
  if (asking.length === 0) {
    const unheard = bases === 'not-stated' ? ` ${SPEECH_WAITS}` : '';
    return nothing(
      speakers.length === 0
        ? `Nothing was captured that speaks for a change.${unheard}`
        : `No method asks for a change.${unheard}`,
    );
  }
  const direction = decidedBy(asking);
  if (direction === null) {
    return nothing('The methods disagree about the direction: measure again before changing anything.');
  }
  const range = correctionRange(stage, direction);
  const correction: Correction = {
    direction,
    leastMm: range.leastMm,
    mostMm: range.mostMm,
    supportedBy: asking.filter((line) => line.indicates === direction).map((line) => line.code),
    contradictedBy: speakers.filter((line) => line.indicates !== direction).map((line) => line.code),
    screwSteps: input.screw === undefined ? [] : screwSteps(input.screw, range.leastMm),
    repeatAfterwards: REPEAT_AFTER_CHANGE,
  };
  const note = 'Advice in small steps, each followed by measuring again. The clinician decides.';
  return { bases, lines, correction, note: bases === 'not-stated' ? `${note} ${SPEECH_WAITS}` : note };
}

/** Contact in speech on stable bases or a lost rest distance decides alone; otherwise all that ask must agree. */
function decidedBy(asking: readonly WorkUpLine[]): 'lower' | 'raise' | null {
  const isHard = (line: WorkUpLine): boolean =>
    line.indicates === 'lower' &&
    (line.code === 'sibilant-test' ||
      (line.code === 'closest-speaking-space' && line.value === 0) ||
      (line.code === 'interocclusal-rest-distance' && Number(line.value) <= 0));
  if (asking.some(isHard)) return 'lower';
  const directions = new Set(asking.map((line) => line.indicates));
  return directions.size > 1 ? null : directions.has('lower') ? 'lower' : 'raise';
}

/** Millimetres that bring the rest distance into its usual range; a first small step where only speech asks. */
function correctionRange(stage: Stage, direction: 'lower' | 'raise'): { leastMm: number; mostMm: number } {
  const usual = usualRange(stage, 'interocclusal-rest-distance');
  const distance = restDistance(stage);
  const speech = { leastMm: SPEECH_STEP_MM.max, mostMm: SPEECH_STEP_MM.min };
  if (distance === null || usual === null) return direction === 'lower' ? speech : { leastMm: 1, mostMm: 2 };
  // Lowering the occlusal dimension by a millimetre adds one to the rest distance.
  if (direction === 'lower') {
    return distance < usual.min ? { leastMm: tidy(distance - usual.min), mostMm: tidy(distance - usual.max) } : speech;
  }
  return distance > usual.max
    ? { leastMm: tidy(distance - usual.max), mostMm: tidy(distance - usual.min) }
    : { leastMm: 1, mostMm: 2 };
}

function usualRange(stage: Stage, code: string): ClosedRange | null {
  return stage.settings.usual(measurementByCode(code) as NumberMeasurement, stage.person)?.range ?? null;
}

function restDistance(stage: Stage): number | null {
  const rest = stage.summary('vertical-dimension-at-rest');
  const occlusal = stage.summary('occlusal-vertical-dimension');
  return rest === null || occlusal === null
    ? null
    : differenceOfSummaries('Rest and occlusal vertical dimension', rest, occlusal);
}

function line(code: string, value: number | string | null, indicates: Indication): WorkUpLine {
  const measurement = measurementByCode(code);
  return {
    code,
    name: measurement.name,
    value,
    unit: measurement.kind === 'number' ? measurement.unit : null,
    indicates: value === null ? 'unclear' : indicates,
    weakness: WEAKNESS[code] ?? measurement.caution,
    source: measurement.source.text,
    standing: measurement.source.standing,
  };
}

/** Below the usual range the jaws are too far open, above it too far closed. */
function tooOpenBelow(usual: ClosedRange | null, value: number): Indication {
  if (usual === null) return 'unclear';
  return value < usual.min ? 'lower' : value > usual.max ? 'raise' : 'keep';
}

function restLine(stage: Stage): WorkUpLine {
  const distance = restDistance(stage);
  return line(
    'interocclusal-rest-distance',
    distance,
    distance === null ? 'unclear' : tooOpenBelow(usualRange(stage, 'interocclusal-rest-distance'), distance),
  );
}

function speakingSpaceLine(stage: Stage): WorkUpLine {
  const space = stage.summary('closest-speaking-space')?.median ?? null;
  const stable = stabilityOfBases(stage) === 'stable';
  if (space === null || !stable) return line('closest-speaking-space', space, 'unclear');
  return line('closest-speaking-space', space, tooOpenBelow(usualRange(stage, 'closest-speaking-space'), space));
}

function sibilantLine(stage: Stage): WorkUpLine {
  const answer = stage.answer('sibilant-test');
  const touches = answer === 'contact' || answer === 'click';
  const indicates =
    stabilityOfBases(stage) !== 'stable' ? 'unclear' : touches ? 'lower' : answer === 'no-contact' ? 'keep' : 'unclear';
  return line('sibilant-test', answer === null ? null : String(answer), indicates);
}

function thirdsLine(stage: Stage): WorkUpLine {
  const lower = stage.summary('lower-facial-third');
  const middle = stage.summary('middle-facial-third');
  if (lower === null || middle === null) return line('lower-to-middle-third', null, 'unclear');
  const percent = lowerToMiddleThirdPercent({ lowerMm: lower.median, middleMm: middle.median });
  const usual = usualRange(stage, 'lower-to-middle-third');
  const indicates = usual === null ? 'unclear' : percent > usual.max ? 'lower' : percent < usual.min ? 'raise' : 'keep';
  return line('lower-to-middle-third', percent, indicates);
}

function swallowLine(stage: Stage): WorkUpLine {
  const swallow = stage.summary('swallow-vertical-dimension');
  const occlusal = stage.summary('occlusal-vertical-dimension');
  if (swallow === null || occlusal === null)
    return line('swallow-vertical-dimension', swallow?.median ?? null, 'unclear');
  const difference = differenceOfSummaries('Swallowing and occlusal vertical dimension', swallow, occlusal);
  const allowed = stage.limit('swallow-difference-mm').value;
  return line(
    'swallow-vertical-dimension',
    swallow.median,
    difference > allowed ? 'raise' : difference < -allowed ? 'lower' : 'keep',
  );
}

function oldDentureLine(stage: Stage): WorkUpLine {
  const now = stage.summary('occlusal-vertical-dimension');
  const old = stage.summary('old-denture-occlusal-vertical-dimension');
  if (now === null || old === null) return line('change-of-occlusal-vertical-dimension', null, 'unclear');
  const change = differenceOfSummaries('New and old occlusal vertical dimension', now, old);
  const usual = usualRange(stage, 'change-of-occlusal-vertical-dimension');
  const indicates = usual === null ? 'unclear' : change > usual.max ? 'lower' : change < usual.min ? 'raise' : 'keep';
  return line('change-of-occlusal-vertical-dimension', change, indicates);
}

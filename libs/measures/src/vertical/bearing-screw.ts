import { InvalidValueError } from '../errors.js';
import { tidy } from '../readings/summary.js';

export type TurnDirection = 'clockwise' | 'counter-clockwise';

/** The central bearing screw of a tracing set, as the kit's record states it. */
export interface BearingScrew {
  readonly pitchMmPerTurn: number;
  /** Seen from the side of the screw's head. */
  readonly raisesBy: TurnDirection;
}

export interface ScrewStep {
  readonly direction: TurnDirection;
  /** At most half a turn. */
  readonly turns: number;
  /** What the skin marks may have moved by in all after this step, mm, signed; at most, see {@link screwSteps}. */
  readonly skinMmSoFar: number;
  readonly then: string;
}

const HALF_TURN = 0.5;

/**
 * A change at the skin marks as small turns of the bearing screw, each followed by measuring again.
 *
 * The needle lies nearer the hinge than the chin, so skin-mark millimetres overstate the needle's travel: the turns are
 * an upper bound, and the change may be reached early. Advice, never a setting.
 *
 * @param changeMm wanted change of the occlusal vertical dimension, mm; positive raises
 * @returns no step for a change of zero
 * @throws {InvalidValueError} for a pitch outside 0.1 to 3 mm per turn or a change beyond 15 mm
 */
export function screwSteps(screw: BearingScrew, changeMm: number): readonly ScrewStep[] {
  const { pitchMmPerTurn, raisesBy } = screw;
  if (!(pitchMmPerTurn >= 0.1 && pitchMmPerTurn <= 3)) {
    throw new InvalidValueError('not-finite', 'screw pitch', pitchMmPerTurn, '0.1 to 3 mm per turn');
  }
  if (!(Math.abs(changeMm) <= 15)) throw new InvalidValueError('not-finite', 'change', changeMm, '-15 to 15 mm');
  const lowersBy: TurnDirection = raisesBy === 'clockwise' ? 'counter-clockwise' : 'clockwise';
  const direction = changeMm > 0 ? raisesBy : lowersBy;
  const total = Math.abs(changeMm) / pitchMmPerTurn;
  const count = Math.ceil(tidy(total / HALF_TURN));
  return Array.from({ length: count }, (_, index): ScrewStep => {
    const doneBefore = index * HALF_TURN;
    const turns = tidy(Math.min(HALF_TURN, total - doneBefore));
    return {
      direction,
      turns,
      skinMmSoFar: tidy(Math.sign(changeMm) * (doneBefore + turns) * pitchMmPerTurn),
      then: 'Close, measure the vertical dimension again, repeat the sibilant test; stop as soon as it is reached.',
    };
  });
}

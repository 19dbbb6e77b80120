import { TracingError } from '../errors.js';
import { toDegrees, toRadians, type Point } from '../point.js';

/**
 * Lateral movement as a rotation in the horizontal plane: teaching, never an articulator setting. It says why sharp
 * intra-oral and blunt extra-oral arches are never compared in degrees.
 */
export interface PlanarModel {
  /** Distance between the condyles, mm. */
  readonly intercondylarMm: number;
  /** Needle in front of the condylar axis, mm. */
  readonly needleMm: number;
  /** Bennett angle: immediate shift of the working condyle as an angle; 0 for pure rotation. */
  readonly bennettDeg?: number;
}

function requireModel({ intercondylarMm, needleMm, bennettDeg = 0 }: PlanarModel): Required<PlanarModel> {
  if (!(intercondylarMm > 0 && needleMm > 0 && bennettDeg >= 0 && bennettDeg < 90)) {
    throw new TracingError(
      'not-a-number',
      'Planar model: distances must be above 0 mm and the Bennett angle from 0 to below 90 degrees.',
      { intercondylarMm, needleMm, bennettDeg },
    );
  }
  return { intercondylarMm, needleMm, bennettDeg };
}

/** Angle of each arm from the transverse axis at the apex, degrees. */
export function armAngleDeg(model: PlanarModel): number {
  const { intercondylarMm, needleMm, bennettDeg } = requireModel(model);
  return toDegrees(Math.atan2(intercondylarMm / 2, needleMm + intercondylarMm * Math.tan(toRadians(bennettDeg))));
}

/** Angle between the arms, degrees: 120 where needle and condyles make an equilateral triangle. */
export const modelApexAngleDeg = (model: PlanarModel): number => 180 - 2 * armAngleDeg(model);

/** The Bennett angle that gives an arm angle, degrees; below 0 where the needle alone gives a blunter arch. */
export function bennettAngleDeg(model: Omit<PlanarModel, 'bennettDeg'>, armDeg: number): number {
  const { intercondylarMm, needleMm } = requireModel(model);
  return toDegrees(Math.atan((intercondylarMm / 2 / Math.tan(toRadians(armDeg)) - needleMm) / intercondylarMm));
}

/**
 * Where the needle stands after a rotation about the working condyle, from where it started: x along the arm's side,
 * y forward, mm. The chord makes half the rotation less with the transverse axis than the tangent at the apex.
 */
export function rotated(model: Omit<PlanarModel, 'bennettDeg'>, rotationDeg: number): Point {
  const { intercondylarMm, needleMm } = requireModel(model);
  const angle = toRadians(rotationDeg);
  const [x, y] = [-intercondylarMm / 2, needleMm];
  return {
    x: Math.cos(angle) * x + Math.sin(angle) * y - x,
    y: -Math.sin(angle) * x + Math.cos(angle) * y - y,
  };
}

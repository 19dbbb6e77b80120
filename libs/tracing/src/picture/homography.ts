import { Matrix, solve } from 'ml-matrix';
import { TracingError } from '../errors.js';
import { cross, minus, type Point } from '../point.js';

/** A plane seen by a camera: maps points of one plane to the other. */
export type Projection = (point: Point) => Point;

export interface PlaneMap {
  /** From the picture, pixels, to the plate, mm; y down as in the picture. */
  readonly toPlate: Projection;
  readonly toPicture: Projection;
}

type FourPoints = readonly [Point, Point, Point, Point];

/** The projection that takes four points to four others; no three on one line. */
function projectionBetween(from: FourPoints, to: FourPoints): Projection {
  const rows: number[][] = [];
  const right: number[] = [];
  from.forEach(({ x, y }, at) => {
    const target = to[at]!;
    rows.push([x, y, 1, 0, 0, 0, -target.x * x, -target.x * y], [0, 0, 0, x, y, 1, -target.y * x, -target.y * y]);
    right.push(target.x, target.y);
  });
  const h = solve(new Matrix(rows), Matrix.columnVector(right)).getColumn(0);
  return ({ x, y }) => {
    const depth = h[6]! * x + h[7]! * y + 1;
    return { x: (h[0]! * x + h[1]! * y + h[2]!) / depth, y: (h[3]! * x + h[4]! * y + h[5]!) / depth };
  };
}

/** The marks go round one way, no three on a line: else they are no picture of a rectangle. */
function requireRectangle(marks: FourPoints): void {
  const turns = marks.map((mark, at) =>
    cross(minus(marks[(at + 1) % 4]!, mark), minus(marks[(at + 2) % 4]!, marks[(at + 1) % 4]!)),
  );
  const area = Math.abs(turns.reduce((sum, turn) => sum + turn, 0));
  if (turns.every((turn) => turn > 1e-3 * area)) return;
  throw new TracingError(
    'marks',
    'The four marks are no picture of a rectangle. Accepted: pixel positions from the top left mark on, clockwise.',
  );
}

/**
 * Perspective from four marks of a rectangle on the plate.
 *
 * @param marks in the picture, pixels, from the rectangle's top left clockwise
 * @throws {TracingError} `tracing.marks` or `tracing.scale`
 */
export function fromMarks(marks: FourPoints, widthMm: number, heightMm: number): PlaneMap {
  if (!(widthMm > 0 && heightMm > 0)) {
    throw new TracingError(
      'scale',
      `A rectangle of ${String(widthMm)} x ${String(heightMm)} mm is none. Accepted: sizes above 0 mm.`,
    );
  }
  requireRectangle(marks);
  const plate: FourPoints = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  return { toPlate: projectionBetween(marks, plate), toPicture: projectionBetween(plate, marks) };
}

/** @throws {TracingError} `tracing.scale` for a scale that no camera or scanner makes of a plate */
export function fromScale(mmPerPixel: number): PlaneMap {
  if (!(mmPerPixel > 0.001 && mmPerPixel < 0.5)) {
    throw new TracingError(
      'scale',
      `A scale of ${String(mmPerPixel)} mm per pixel is not accepted. Accepted: from 0.001 to 0.5; a plate of 40 mm is then seen.`,
    );
  }
  return {
    toPlate: ({ x, y }) => ({ x: x * mmPerPixel, y: y * mmPerPixel }),
    toPicture: ({ x, y }) => ({ x: x / mmPerPixel, y: y / mmPerPixel }),
  };
}

import type { EvaluatedForm, TracingInput } from '@archwright/tracing';
import { messages as english } from './en/tracing-pad.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/tracing-pad.js'),
  ar: () => import('./ar/tracing-pad.js'),
});
const { pad } = said;
const ofAttempt = (attempt: number) => ({ attempt });
const counted = (n: number) => ({ n });
// A hair beside nothing is nothing, not "-0.00".
const hundredths = (mm: number): string => mm.toFixed(2).replace(/^-0\.00$/, '0.00');
const place = (x: number, y: number) => ({ x: hundredths(x), y: hundredths(y) });

const cursor = filled(pad.cursor, place);
const carrying = filled(pad.carrying, place);
const savedAttempt = filled(pad.savedAttempt, counted);
const freshAttempt = filled(pad.freshAttempt, counted);

/** Words of the pad on which a needle-point tracing is drawn. */
export const padWords = {
  ...pad,
  padOf: filled(pad.padOf, ofAttempt),
  phaseOf: filled(pad.phaseOf, ofAttempt),
  toolOf: filled(pad.toolOf, ofAttempt),
  phase: {
    right: filled(pad.phase.right, counted),
    left: filled(pad.phase.left, counted),
    protrusive: filled(pad.phase.protrusive, counted),
    closure: filled(pad.phase.closure, counted),
  },
  cursor: (x: number, y: number, isCarrying: boolean) => (isCarrying ? carrying : cursor)(x, y),
  /** Which side of the patient an edge of the screen shows. */
  edge: (view: TracingInput['view'], edge: 'left' | 'right') =>
    (view === 'as-worn') === (edge === 'right') ? pad.rightEdge : pad.leftEdge,
  said: filled(pad.said, (form: EvaluatedForm, angleDeg: number) => ({
    form: pad.forms[form],
    angle: angleDeg.toFixed(1),
  })),
  mm: filled(pad.mm, (value: string) => ({ value })),
  degrees: filled(pad.degrees, (value: string) => ({ value })),
  arm: filled(pad.arm, (angle: string, length: string) => ({ angle, length })),
  closed: filled(pad.closed, (n: number, scatter: string) => ({ n, scatter })),
  attempt: (n: number, isSaved: boolean) => (isSaved ? savedAttempt : freshAttempt)(n),
  drawingOf: filled(pad.drawingOf, (name: string) => ({ name })),
  apexAt: filled(pad.apexAt, place),
  spread: filled(pad.spread, (n: number, least: string, most: string, scatter: string, widest: string) => ({
    n,
    least,
    most,
    scatter,
    widest,
  })),
  picture: {
    ...pad.picture,
    tooLarge: filled(pad.picture.tooLarge, (most: number) => ({ most })),
    mark: filled(pad.picture.mark, (n: number, x: number, y: number) => ({ n, x, y })),
    found: filled(pad.picture.found, counted),
  },
};

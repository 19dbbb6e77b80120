import type { EvaluatedForm, Evaluation, TracingInput } from '@archwright/tracing';
import { count, spelled } from './plural.js';

/** Words of the pad on which a needle-point tracing is drawn. */
export const padWords = {
  padOf: (attempt: number) => `Plate of attempt ${String(attempt)}, a millimetre grid`,
  phaseOf: (attempt: number) => `Movement to draw, attempt ${String(attempt)}`,
  toolOf: (attempt: number) => `What a touch does, attempt ${String(attempt)}`,
  phase: {
    right: (n: number) => `Right arm (${String(n)})`,
    left: (n: number) => `Left arm (${String(n)})`,
    protrusive: (n: number) => `Protrusive (${String(n)})`,
    closure: (n: number) => `Closures (${String(n)})`,
  },
  tool: { draw: 'Draw', move: 'Move', remove: 'Remove' },
  undo: 'Undo',
  clear: {
    right: 'Clear the right arm',
    left: 'Clear the left arm',
    protrusive: 'Clear the protrusive path',
    closure: 'Clear the closures',
  },
  help:
    'Draw with finger, pen or mouse; a tap sets one point. One line every millimetre. By keys: arrows move the cursor, ' +
    'with Shift in larger steps; Enter sets a point, or picks one up and puts it down while Move is chosen; Delete removes the nearest.',
  cursor: (x: number, y: number, isCarrying: boolean) =>
    `${isCarrying ? 'Carrying a point. ' : ''}${x.toFixed(2)} mm across, ${y.toFixed(2)} mm forward.`,
  /** Which side of the patient an edge of the screen shows. */
  edge: (view: TracingInput['view'], edge: 'left' | 'right') =>
    (view === 'as-worn') === (edge === 'right') ? 'patient’s right' : 'patient’s left',
  forward: 'forward',
  noApex: 'The arms do not make an apex.',
  said: (form: EvaluatedForm, angleDeg: number) => `Form ${spelled(form)}, apex angle ${angleDeg.toFixed(1)} degrees.`,
  doubt: {
    'arms-swapped': 'The right arm lies on the patient’s left: check how the plate is seen and where the stylus is.',
    turned: 'The arms do not lead forward: check where the stylus is.',
  } satisfies Record<Evaluation['doubts'][number], string>,
  mm: (value: string) => `${value} mm`,
  degrees: (value: string) => `${value} degrees`,
  apexKnown: 'Apex known to',
  rightArm: 'Right arm',
  leftArm: 'Left arm',
  arm: (angle: string, length: string) => `${angle}, ${length} long`,
  asymmetry: 'Asymmetry',
  protrusive: 'Protrusive path off the middle, to the right',
  rounding: 'Rounding of the apex',
  closures: 'Closures',
  closed: (n: number, scatter: string) => `${count(n, 'closure', 'closures')}, scatter ${scatter}`,
  offset: 'Closures from the apex',
  judgement: 'None of the limits behind the form is published. It supports judgement and does not replace it.',
  compare: 'Attempts of this sitting, side by side',
  compareColumns: {
    attempt: 'Attempt',
    drawing: 'Drawing',
    form: 'Form',
    angle: 'Apex angle',
    apex: 'Apex: right, forward',
    closures: 'Closures, scatter',
  },
  attempt: (n: number, isSaved: boolean) => (isSaved ? `recorded ${String(n)}` : `${String(n)}. attempt, not saved`),
  drawingOf: (name: string) => `Drawing: ${name}`,
  typed: 'findings typed',
  none: 'no apex',
  apexAt: (x: string, y: string) => `${x}, ${y} mm`,
  spread: (n: number, least: string, most: string, scatter: string, widest: string) =>
    `${count(n, 'attempt', 'attempts')} with an apex: angles from ${least} to ${most} degrees; apices scatter by ${scatter} mm, the widest pair ${widest} mm apart.`,
  spreadNote:
    'Places of apices compare only where every attempt was measured from one zero of one plate that stayed where it was.',
  picture: {
    open: 'Draw on a photograph of the plate',
    choose: 'Photograph or scan of the plate',
    stays: 'The picture stays in this browser; only the points are saved.',
    unreadable: 'This is no picture that the browser can read. Choose a JPEG or PNG file.',
    tooLarge: (most: number) => `The picture is too large. Up to ${String(most)} megapixels are read.`,
    alt: 'The photograph that was chosen, with the marks of the scale',
    scale: 'Scale of the picture',
    byLength: 'Two marks and the length between them',
    byRectangle: 'Four marks of a rectangle; this also straightens the picture',
    lengthMm: 'Length between the marks, mm',
    widthMm: 'Width of the rectangle, mm',
    heightMm: 'Height of the rectangle, mm',
    mark: (n: number, x: number, y: number) => `Mark ${String(n)}, at ${String(x)}, ${String(y)} pixels`,
    marksHelp:
      'Drag each mark to its place on the picture, the first at the top left and on clockwise; or move it by arrow keys, with Shift in larger steps. The picture’s top is the patient’s forward.',
    find: 'Find the traced lines',
    finding: 'Looking for the lines …',
    byHand: 'Draw on it by hand',
    found: (n: number) => `${count(n, 'point was', 'points were')} found. Correct them where they are wrong.`,
    numbers: 'Enter the length in millimetres, above 0.',
  },
};

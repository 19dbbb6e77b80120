import type { ReactNode, SVGProps } from 'react';
import { direction } from '../words/language.js';

const isMirrored = direction === 'rtl';

interface Props extends SVGProps<SVGSVGElement> {
  /** Width of the drawing's own units, in which its parts are placed from the left edge. */
  across: number;
  children: ReactNode;
}

/**
 * A picture in which time goes on with the reading direction. Its parts are placed for left to right; where people read the
 * other way it is mirrored as a whole. Pictures of the mouth and charts of measurements are never mirrored.
 */
export function TimeDrawing({ across, children, className = '', ...rest }: Props) {
  return (
    <svg {...rest} className={`time-drawing ${className}`}>
      {isMirrored ? <g transform={`translate(${String(across)} 0) scale(-1 1)`}>{children}</g> : children}
    </svg>
  );
}

/** Text in a `TimeDrawing`: at its mirrored place, but never mirrored itself. */
export function DrawnText({ x, y, ...rest }: SVGProps<SVGTextElement> & { x: number; y: number }) {
  return isMirrored ? (
    <text {...rest} transform={`translate(${String(x)} ${String(y)}) scale(-1 1)`} />
  ) : (
    <text {...rest} x={x} y={y} />
  );
}

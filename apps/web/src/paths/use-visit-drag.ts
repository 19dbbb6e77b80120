import { useState, type PointerEvent } from 'react';
import { direction } from '../words/language.js';

interface Dragged {
  readonly code: string;
  /** Where the pointer went down, and how far along the line it is drawn since. */
  readonly fromX: number;
  readonly along: number;
}

/** Visits that are drawn along a line, picked up by pointer or finger and put down elsewhere on it. */
export function useVisitDrag(onDrop: (code: string, along: number) => void) {
  const [dragged, setDragged] = useState<Dragged | null>(null);
  const sense = direction === 'rtl' ? -1 : 1;
  return {
    /** How far a visit has been carried, 0 for those that lie where they are. */
    carried: (code: string): number => (dragged?.code === code ? dragged.along : 0),
    handlersOf: (code: string) => ({
      onPointerDown: (event: PointerEvent<SVGElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setDragged({ code, fromX: event.clientX, along: 0 });
      },
      onPointerMove: (event: PointerEvent<SVGElement>) => {
        if (dragged?.code === code) setDragged({ ...dragged, along: sense * (event.clientX - dragged.fromX) });
      },
      onPointerUp: (event: PointerEvent<SVGElement>) => {
        // Where it is now: a quick hand lets go before the last step is drawn.
        if (dragged?.code === code) onDrop(code, sense * (event.clientX - dragged.fromX));
        setDragged(null);
      },
      onPointerCancel: () => {
        setDragged(null);
      },
    }),
  };
}

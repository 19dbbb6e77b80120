import { MOST_TRACED_POINTS } from '@archwright/contracts';
import { useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { DrawnPoint, Phase } from './drawn-tracing.js';
import { nearest, stepOf, strokeTo, within, type Extent, type Place } from './pad-frame.js';

export type Tool = 'draw' | 'move' | 'remove';

/** A fingertip, pixels: a point is grabbed within half of it. */
const FINGER_PX = 44;

interface Hand {
  /** Points as they will be when the finger lifts. */
  readonly points: readonly DrawnPoint[];
  /** What was there before a stroke; the stroke is added to it. */
  readonly before: readonly DrawnPoint[];
  readonly stroke: readonly DrawnPoint[];
  /** Position of the point that is moved; null while drawing. */
  readonly grabbed: number | null;
}

/** Where the pointer is on the plate, and how many mm a pixel is. */
function placeOf(event: PointerEvent<SVGSVGElement>): { place: Place; mmPerPixel: number } | null {
  const matrix = event.currentTarget.getScreenCTM();
  if (matrix === null) return null;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  return { place: { x, y: -y }, mmPerPixel: 1 / matrix.a };
}

interface Given {
  points: readonly DrawnPoint[];
  extent: Extent;
  phase: Phase;
  tool: Tool;
  onChange: (points: readonly DrawnPoint[]) => void;
}

/** Drawing, moving and removing points by finger, pen, mouse or keys; every change can be taken back. */
export function usePad({ points, extent, phase, tool, onChange }: Given) {
  const [hand, setHand] = useState<Hand | null>(null);
  const [past, setPast] = useState<readonly (readonly DrawnPoint[])[]>([]);
  const [cursor, setCursor] = useState<Place>({ x: 0, y: 0 });
  /** Position of the point that the keys carry. */
  const [carried, setCarried] = useState<number | null>(null);

  function change(next: readonly DrawnPoint[]): void {
    if (next === points || next.length > MOST_TRACED_POINTS) return;
    setPast([...past, points]);
    onChange(next);
  }
  const withPlace = (at: number, place: Place): readonly DrawnPoint[] =>
    points.map((point, index) => (index === at ? { ...point, ...within(extent, place) } : point));
  const without = (at: number | null): readonly DrawnPoint[] =>
    at === null ? points : points.filter((_, index) => index !== at);

  function press(event: PointerEvent<SVGSVGElement>): void {
    const pressed = placeOf(event);
    if (pressed === null || !event.isPrimary || event.button !== 0) return;
    const place = within(extent, pressed.place);
    setCursor(place);
    setCarried(null);
    const near = nearest(points, place, (FINGER_PX / 2) * pressed.mmPerPixel);
    if (tool === 'remove') {
      change(without(near));
      return;
    }
    event.currentTarget.setPointerCapture(event.pointerId);
    if (tool === 'draw') {
      const stroke = strokeTo([], phase, place);
      setHand({ points: [...points, ...stroke], before: points, stroke, grabbed: null });
    } else if (near !== null) setHand({ points, before: points, stroke: [], grabbed: near });
  }

  function drag(event: PointerEvent<SVGSVGElement>): void {
    if (hand === null) return;
    const dragged = placeOf(event);
    if (dragged === null) return;
    const place = within(extent, dragged.place);
    if (hand.grabbed !== null) setHand({ ...hand, points: withPlace(hand.grabbed, place) });
    // A tap stays one closure, however the finger trembles.
    else if (phase !== 'closure') {
      const stroke = strokeTo(hand.stroke, phase, place);
      if (stroke !== hand.stroke) setHand({ ...hand, stroke, points: [...hand.before, ...stroke] });
    }
  }

  function lift(): void {
    if (hand !== null) change(hand.points);
    setHand(null);
  }

  function keyed(event: KeyboardEvent): void {
    const step = stepOf(event.key, event.shiftKey);
    const isAct = event.key === 'Enter' || event.key === ' ';
    if (step === null && !isAct && event.key !== 'Delete' && event.key !== 'Backspace') return;
    event.preventDefault();
    if (step !== null) {
      const next = within(extent, { x: cursor.x + step.x, y: cursor.y + step.y });
      setCursor(next);
      if (carried !== null) change(withPlace(carried, next));
    } else if (!isAct || tool === 'remove') {
      setCarried(null);
      change(without(carried ?? nearest(points, cursor, 1)));
    } else if (tool === 'draw') change([...points, { phase, ...cursor }]);
    else setCarried(carried === null ? nearest(points, cursor, 1) : null);
  }

  return {
    shown: hand?.points ?? points,
    cursor,
    isCarrying: carried !== null,
    canUndo: past.length > 0,
    press,
    drag,
    lift,
    giveUp: () => {
      setHand(null);
    },
    keyed,
    undo: () => {
      const before = past.at(-1);
      if (before === undefined) return;
      setPast(past.slice(0, -1));
      setCarried(null);
      onChange(before);
    },
    clear: () => {
      setCarried(null);
      change(points.filter((point) => point.phase !== phase));
    },
  };
}

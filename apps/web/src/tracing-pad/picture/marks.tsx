import { useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { padWords } from '../../words/tracing-pad.js';
import { stepOf, type Place } from '../pad-frame.js';
import type { LoadedPicture } from './load-picture.js';

const words = padWords.picture;
/** Of a key press, pixels for a quarter of a millimetre's step: one pixel, eight with the shift key. */
const PIXELS_PER_STEP = 4;

interface Props {
  picture: LoadedPicture;
  marks: readonly Place[];
  onMove: (at: number, place: Place) => void;
}

/** The photograph with marks to drag to known places on it. */
export function MarkedPicture({ picture, marks, onMove }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height, url } = picture;
  const move = (at: number, { x, y }: Place): void => {
    const kept = (value: number, most: number): number => Math.round(Math.min(Math.max(value, 0), most));
    onMove(at, { x: kept(x, width), y: kept(y, height) });
  };

  function drag(event: PointerEvent<HTMLButtonElement>, at: number): void {
    const box = frame.current?.getBoundingClientRect();
    if (box === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    move(at, {
      x: ((event.clientX - box.left) / box.width) * width,
      y: ((event.clientY - box.top) / box.height) * height,
    });
  }

  function keyed(event: KeyboardEvent, at: number, mark: Place): void {
    const step = stepOf(event.key, event.shiftKey);
    if (step === null) return;
    event.preventDefault();
    move(at, { x: mark.x + PIXELS_PER_STEP * step.x, y: mark.y - PIXELS_PER_STEP * step.y });
  }

  return (
    <div ref={frame} className="plate-picture">
      <img src={url} alt={words.alt} draggable={false} />
      {marks.map((mark, at) => (
        <button
          key={at}
          type="button"
          className="plate-mark"
          aria-label={words.mark(at + 1, mark.x, mark.y)}
          style={{ left: `${String((100 * mark.x) / width)}%`, top: `${String((100 * mark.y) / height)}%` }}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
          }}
          onPointerMove={(event) => {
            drag(event, at);
          }}
          onKeyDown={(event) => {
            keyed(event, at, mark);
          }}
        >
          <span aria-hidden="true">{at + 1}</span>
        </button>
      ))}
    </div>
  );
}

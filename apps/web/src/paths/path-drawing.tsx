import type { TreatmentPath } from '@archwright/protocol';
import { useRef } from 'react';
import { DrawnText, TimeDrawing } from '../look/time-drawing.js';
import { delivered } from '../words/delivered.js';
import { editorWords } from '../words/path-editor.js';
import { pathWords as words } from '../words/paths.js';
import { DrawnButton, useRoving } from './drawn-button.js';
import type { DraftFault } from './path-draft.js';
import { keyOf, partName, type PartRef } from './path-parts.js';
import { drawPath, placeAlong, type PathPicture } from './path-picture.js';
import { shortened, turnaroundLabel, waitLabel } from './picture-labels.js';
import { useVisitDrag } from './use-visit-drag.js';

interface Props {
  path: TreatmentPath;
  faults?: readonly DraftFault[];
  chosen?: PartRef;
  /** Opens a part; goes there where it is asked for by keyboard. Without it the drawing is only looked at. */
  onChoose?: (part: PartRef, goesThere: boolean) => void;
  /** Lets visits be dragged to another place in the order, which counts from 0. */
  onPut?: (code: string, place: number) => void;
}

/** Visits in a row, laboratory work below, the ways between them, waits above and ways back beneath. */
export function PathDrawing({ path, faults = [], chosen, onChoose, onPut }: Props) {
  const picture = drawPath(path);
  const { carried, handlersOf } = useVisitDrag((code, along) => {
    onPut?.(code, placeAlong(path, code, along));
  });
  const sheet = useRef<HTMLDivElement>(null);
  const parts = partsOf(picture);
  const isShown = chosen !== undefined && parts.some((part) => keyOf(part) === keyOf(chosen));
  const roving = useRoving(sheet, parts, isShown ? chosen : parts[0]);
  const label = words.pictureOf(path.title, path.visits.length, path.labPhases.length);
  const isChosen = (part: PartRef): boolean => chosen !== undefined && keyOf(chosen) === keyOf(part);
  const common = (kind: PartRef['kind'], code: string) => {
    const part = { kind, code };
    return {
      part,
      label: editorWords.chosen(editorWords.kinds[kind], partName(path, part)),
      isChosen: isChosen(part),
      hasFault: faults.some((fault) => keyOf(fault.part) === keyOf(part)),
      ...(onChoose === undefined ? {} : { roving, onChoose }),
    };
  };
  const lags = new Map(path.lags.map((lag) => [lag.code, lag]));
  const loops = new Map(path.loops.map((loop) => [loop.code, loop]));
  const titles = new Map(path.labPhases.flatMap(({ steps }) => steps.map(({ code, title }) => [code, title])));
  const turnarounds = new Map(path.labPhases.map((phase) => [phase.code, turnaroundLabel(phase)]));
  const { box, radius, visits } = picture;
  const first = visits[0];
  const last = visits.at(-1);
  const isLooked = onChoose === undefined;
  return (
    <div
      ref={sheet}
      className="sheet sheet-pad scroll-x path-sheet"
      {...(isLooked ? { tabIndex: 0 } : {})}
      role="group"
      aria-label={isLooked ? words.picture : editorWords.drawing}
    >
      <TimeDrawing
        across={picture.width}
        className="path-picture"
        width={picture.width}
        height={picture.height}
        {...(isLooked ? { role: 'img', 'aria-label': label } : {})}
      >
        {first && last ? (
          <path className="path-line" d={`M${String(first.x)} ${String(first.y)}H${String(last.x)}`} />
        ) : null}
        {picture.ways.map(({ key, d }) => (
          <path key={key} className="path-way" d={d} />
        ))}
        {picture.waits.map(({ code, d }) => (
          <path key={code} className="path-wait" d={d} />
        ))}
        {picture.loops.map(({ code, d }) => (
          <path key={code} className="path-loop" d={d} />
        ))}
        {visits.map(({ code, x, y, isDelivery, isLater }) => (
          <DrawnButton
            key={code}
            {...common('visit', code)}
            data-visit={code}
            className={onPut === undefined ? '' : 'path-loose'}
            transform={`translate(${String(carried(code))} 0)`}
            {...(onPut === undefined ? {} : handlersOf(code))}
          >
            <circle className="path-hit" cx={x} cy={y} r={22} />
            <circle className="path-visit" cx={x} cy={y} r={radius} data-delivery={isDelivery} data-later={isLater} />
            <DrawnText x={x} y={y + 4} textAnchor="middle" data-delivery={isDelivery}>
              {code}
            </DrawnText>
          </DrawnButton>
        ))}
        {picture.phases.map(({ code, x, y }) => (
          <DrawnButton key={code} {...common('phase', code)}>
            <Label x={x} y={y} width={box} text={turnarounds.get(code) ?? ''} className="path-phase" />
          </DrawnButton>
        ))}
        {picture.steps.map(({ code, x, y }) => (
          <DrawnButton key={code} {...common('step', code)}>
            <Label
              x={x}
              y={y}
              width={box}
              text={shortened(delivered(titles.get(code) ?? '') || code)}
              className="path-step"
            />
          </DrawnButton>
        ))}
        {picture.waits.map(({ code, x, y }) => (
          <DrawnButton key={code} {...common('lag', code)}>
            <Label x={x} y={y} width={128} text={waitLabel(lags.get(code))} className="path-label" />
          </DrawnButton>
        ))}
        {picture.loops.map(({ code, x, y }) => (
          <DrawnButton key={code} {...common('loop', code)}>
            <Label
              x={x}
              y={y}
              width={box}
              text={shortened(delivered(loops.get(code)?.trigger ?? code))}
              className="path-label"
            />
          </DrawnButton>
        ))}
        {picture.gates.map(({ code, x, y }) => (
          <path
            key={code}
            className="path-gate"
            data-chosen={isChosen({ kind: 'gate', code })}
            d={`M${String(x)} ${String(y - 6)}l6 6l-6 6l-6 -6Z`}
          />
        ))}
      </TimeDrawing>
    </div>
  );
}

/** Everything that can be opened in the drawing, in the order in which the arrows go. */
function partsOf({ visits, phases, steps, waits, loops }: PathPicture): PartRef[] {
  const of = (kind: PartRef['kind'], drawn: readonly { code: string }[]): PartRef[] =>
    drawn.map(({ code }) => ({ kind, code }));
  return [
    ...of('visit', visits),
    ...of('phase', phases),
    ...of('step', steps),
    ...of('lag', waits),
    ...of('loop', loops),
  ];
}

interface LabelProps {
  x: number;
  y: number;
  width: number;
  text: string;
  className: string;
}

/** A named box, with room around it for a finger. */
function Label({ x, y, width, text, className }: LabelProps) {
  return (
    <>
      <rect className="path-hit" x={x - width / 2} y={y - 22} width={width} height={44} />
      <rect className={className} x={x - width / 2} y={y - 15} width={width} height={30} rx={6} />
      <DrawnText x={x} y={y + 4} textAnchor="middle">
        {text}
      </DrawnText>
    </>
  );
}

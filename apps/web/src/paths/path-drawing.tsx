import type { TreatmentPath } from '@archwright/protocol';
import { DrawnText, TimeDrawing } from '../look/time-drawing.js';
import { pathWords as words } from '../words/paths.js';
import { drawPath, placeAlong } from './path-picture.js';
import { useVisitDrag } from './use-visit-drag.js';

interface Props {
  path: TreatmentPath;
  /** Code of the visit that is marked. */
  chosen?: string;
  /** Lets visits be dragged to another place in the order, which counts from 0. */
  onPut?: (code: string, place: number) => void;
}

/** Visits above, laboratory work below, the ways between them as slopes, waits as broken arcs. */
export function PathDrawing({ path, chosen, onPut }: Props) {
  const { width, height, visits, ways, bars, waits } = drawPath(path);
  const { carried, handlersOf } = useVisitDrag((code, along) => {
    onPut?.(code, placeAlong(path, code, along));
  });
  const label = words.pictureOf(path.title, path.visits.length, path.labPhases.length);
  const first = visits[0];
  const last = visits.at(-1);
  return (
    <div className="sheet sheet-pad scroll-x" tabIndex={0} role="group" aria-label={words.picture}>
      <TimeDrawing across={width} className="path-picture" width={width} height={height} role="img" aria-label={label}>
        {first && last ? (
          <path className="path-line" d={`M${String(first.x)} ${String(first.y)}H${String(last.x)}`} />
        ) : null}
        {waits.map(({ code, d }) => (
          <path key={code} className="path-wait" d={d} />
        ))}
        {ways.map(({ key, d }) => (
          <path key={key} className="path-way" d={d} />
        ))}
        {bars.map(({ code, x, y, width: length }) => (
          <rect key={code} className="path-step" x={x} y={y} width={length} height={11} rx={3} />
        ))}
        {visits.map(({ code, x, y, isDelivery, isLater }) => (
          <g
            key={code}
            data-visit={code}
            className={onPut === undefined ? undefined : 'path-loose'}
            transform={`translate(${String(carried(code))} 0)`}
            {...(onPut === undefined ? {} : handlersOf(code))}
          >
            {code === chosen ? <circle className="path-chosen" cx={x} cy={y} r={21} /> : null}
            <circle className="path-visit" cx={x} cy={y} r={16} data-delivery={isDelivery} data-later={isLater} />
            <DrawnText x={x} y={y + 4} textAnchor="middle" data-delivery={isDelivery}>
              {code}
            </DrawnText>
          </g>
        ))}
      </TimeDrawing>
    </div>
  );
}

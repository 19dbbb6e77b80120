import { benchWords as words } from '../words/bench.js';
import type { LoadRow } from './bench-view.js';

interface Props {
  heads: { on: string; label: string }[];
  rows: LoadRow[];
  on: string;
  centre: string | undefined;
  onPick: (centre: string | undefined, on: string) => void;
}

/** Load as a real table that is also the picture: ground by class, stripes over capacity, figures in every cell. */
export function LoadTable({ heads, rows, on, centre, onPick }: Props) {
  return (
    <div className="sheet load scroll-x" tabIndex={0} role="group" aria-label={words.loadTitle}>
      <table className="load-table">
        <caption className="unseen">{words.loadCaption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{words.centre}</span>
            </th>
            {heads.map((head) => (
              <th key={head.on} scope="col" className={head.on === on ? 'load-day load-day-here' : 'load-day'}>
                <button
                  type="button"
                  aria-pressed={head.on === on && centre === undefined}
                  aria-label={words.workTitle(words.everyCentre, head.label)}
                  onClick={() => {
                    onPick(undefined, head.on);
                  }}
                >
                  {head.label}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.name}</th>
              {row.cells.map((cell) => (
                <td key={cell.on}>
                  <button
                    type="button"
                    className={`load-cell load-${String(cell.load)}`}
                    aria-pressed={cell.on === on && centre === row.id}
                    aria-label={cell.label}
                    onClick={() => {
                      onPick(row.id, cell.on);
                    }}
                  >
                    {cell.load === 'closed' ? (
                      words.closed
                    ) : (
                      <>
                        <span className={cell.booked > 0 ? 'load-booked' : 'load-empty'}>{cell.booked}</span>
                        <span className={cell.booked > 0 ? undefined : 'load-empty'}> / {cell.open}</span>
                      </>
                    )}
                  </button>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

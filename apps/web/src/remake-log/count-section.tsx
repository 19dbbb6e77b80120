import { Link } from '@tanstack/react-router';
import { PlainTable } from '../look/plain-table.js';
import { remakeLogWords as words } from '../words/remake-log.js';
import { pictureWords, type CountRow } from './remake-log-view.js';

interface Props {
  id: string;
  title: string;
  note?: string;
  head: string;
  rows: readonly CountRow[];
  /** Where a count leads: the list behind it. */
  searchOf: (key: string) => Record<string, string | undefined>;
}

const ROW = 42;
const WIDTH = 460;

/** Counts as bars, and the same counts as a table whose names lead to what was counted. */
export function CountSection({ id, title, note, head, rows, searchOf }: Props) {
  const { remakes, byCheck, cases } = words.columns;
  return (
    <section className="stack-tight" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {note ? <p className="small soft">{note}</p> : null}
      <svg
        className="count-bars"
        viewBox={`0 0 ${String(WIDTH)} ${String(rows.length * ROW)}`}
        role="img"
        aria-label={pictureWords(title, rows)}
      >
        {rows.map((row, index) => (
          <g key={row.key}>
            <text x="0" y={index * ROW + 14}>
              {row.title}
            </text>
            <rect x="0" y={index * ROW + 19} width={Math.max(2, row.share * (WIDTH - 40))} height={16} />
            <text x={row.share * (WIDTH - 40) + 8} y={index * ROW + 32}>
              {row.remakes}
            </text>
          </g>
        ))}
      </svg>
      <PlainTable
        label={title}
        columns={[head, remakes, byCheck, cases]}
        rows={rows.map((row) => ({
          id: row.key,
          head: (
            <Link to="/bench/remakes" search={searchOf(row.key)} hash="remakes" aria-label={row.link}>
              {row.title}
            </Link>
          ),
          cells: [row.remakes, row.byCheck, row.cases],
        }))}
      />
    </section>
  );
}

import { Checkbox, TextInput } from '@mantine/core';
import type { TimeSpan, TreatmentPath } from '@archwright/protocol';
import type { ReactNode } from 'react';
import { NumberBox } from '../look/number-box.js';
import { PlainTable } from '../look/plain-table.js';
import { pathWords as words } from '../words/paths.js';
import { withNumber, withVisit, type NumberPlace } from './path-draft.js';

interface Props {
  path: TreatmentPath;
  onChange: (path: TreatmentPath) => void;
}

/** The numbers that practices change most, each in a table of its kind. */
export function PathNumbers({ path, onChange }: Props) {
  const field = (place: NumberPlace, label: string, value: number) => (
    <NumberBox
      key={place.field}
      aria-label={words.fieldOf(label, place.code)}
      value={value}
      onChange={(typed) => {
        if (typed !== null) onChange(withNumber(place, typed)(path));
      }}
    />
  );
  const bound = (place: NumberPlace, label: string, span: TimeSpan | null) =>
    span === null ? (
      ''
    ) : (
      <span key={place.field} className="row">
        {field(place, words.inUnit(label, words.units[span.unit]), span.amount)}
        <span className="small soft">{words.units[span.unit]}</span>
      </span>
    );
  return (
    <>
      <NumbersTable
        title={words.visits}
        columns={[
          words.kinds.visit,
          words.fields.title,
          words.fields.least,
          words.fields.usual,
          words.fields.most,
          words.fields.assistant,
        ]}
        rows={path.visits.map(({ code, title, chairMinutes, assistant }) => ({
          code,
          cells: [
            <TextInput
              key="title"
              data-wide
              aria-label={words.fieldOf(words.fields.title, code)}
              value={title}
              onChange={(event) => {
                onChange(withVisit(code, { title: event.currentTarget.value })(path));
              }}
            />,
            field({ of: 'visit', code, field: 'min' }, words.fields.least, chairMinutes.min),
            field({ of: 'visit', code, field: 'typical' }, words.fields.usual, chairMinutes.typical),
            field({ of: 'visit', code, field: 'max' }, words.fields.most, chairMinutes.max),
            <Checkbox
              key="assistant"
              aria-label={words.fieldOf(words.fields.assistant, code)}
              checked={assistant}
              onChange={(event) => {
                onChange(withVisit(code, { assistant: event.currentTarget.checked })(path));
              }}
            />,
          ],
        }))}
      />
      <NumbersTable
        title={words.waits}
        columns={[words.wait, words.atLeast, words.atMost]}
        rows={path.lags.map(({ code, title, min, max }) => ({
          code: title,
          cells: [
            bound({ of: 'lag', code, field: 'min' }, words.atLeast, min),
            bound({ of: 'lag', code, field: 'max' }, words.atMost, max),
          ],
        }))}
      />
      <NumbersTable
        title={words.phases}
        columns={[words.phase, words.fields.usualMin, words.fields.usualMax, words.fields.rush]}
        rows={path.labPhases.map(({ code, after, before, turnaround }) => ({
          code: `${after} – ${before}`,
          cells: [
            field({ of: 'phase', code, field: 'usualMinDays' }, words.fields.usualMin, turnaround.usualMinDays),
            field({ of: 'phase', code, field: 'usualMaxDays' }, words.fields.usualMax, turnaround.usualMaxDays),
            field({ of: 'phase', code, field: 'rushDays' }, words.fields.rush, turnaround.rushDays),
          ],
        }))}
      />
    </>
  );
}

interface TableProps {
  title: string;
  columns: readonly string[];
  rows: readonly { code: string; cells: readonly ReactNode[] }[];
}

function NumbersTable({ title, columns, rows }: TableProps) {
  if (rows.length === 0) return null;
  return (
    <section className="stack-tight path-numbers">
      <h2>{title}</h2>
      <PlainTable
        label={title}
        columns={columns}
        rows={rows.map(({ code, cells }) => ({ id: code, head: code, cells }))}
      />
    </section>
  );
}

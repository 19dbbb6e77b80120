import { TextInput } from '@mantine/core';
import type { MeasurementRangesView } from '@archwright/contracts';
import { PlainTable } from '../look/plain-table.js';
import { rangeWords as words } from '../words/ranges.js';
import type { RangesDraft, RangesErrors } from './ranges-draft.js';

interface Props {
  view: MeasurementRangesView;
  draft: RangesDraft;
  errors: RangesErrors;
  onChange: (draft: RangesDraft) => void;
}

/** What is shipped beside what the practice has; both ends are typed, or neither. */
export function UsualTable({ view, draft, errors, onChange }: Props) {
  return (
    <PlainTable
      label={words.usual}
      columns={Object.values(words.columns)}
      rows={view.usual.map(({ key, name, group, unit, shipped, source, standing }) => {
        const title = group === null ? name : words.nameOf(name, group);
        const typed = draft.usual[key] ?? { min: '', max: '' };
        const end = (side: 'min' | 'max', label: string) => (
          <TextInput
            key={side}
            aria-label={label}
            inputMode="decimal"
            value={typed[side]}
            error={side === 'min' ? errors.usual[key] : errors.usual[key] !== undefined}
            onChange={(event) => {
              onChange({ ...draft, usual: { ...draft.usual, [key]: { ...typed, [side]: event.currentTarget.value } } });
            }}
          />
        );
        return {
          id: key,
          head: title,
          cells: [
            shipped === null ? words.none : words.span(shipped.min, shipped.max, unit),
            end('min', words.least(title)),
            end('max', words.most(title)),
            <Source key="source" source={source} standing={standing} />,
          ],
        };
      })}
    />
  );
}

export function LimitsTable({ view, draft, errors, onChange }: Props) {
  return (
    <PlainTable
      label={words.limits}
      columns={Object.values(words.limitColumns)}
      rows={view.limits.map(({ code, meaning, unit, shipped, adjustable, source, standing }) => ({
        id: code,
        head: meaning,
        cells: [
          words.value(shipped, unit),
          adjustable === null ? (
            words.fixed
          ) : (
            <TextInput
              key="own"
              aria-label={words.limit(meaning)}
              inputMode="decimal"
              value={draft.limits[code] ?? ''}
              error={errors.limits[code]}
              onChange={(event) => {
                onChange({ ...draft, limits: { ...draft.limits, [code]: event.currentTarget.value } });
              }}
            />
          ),
          <Source key="source" source={source} standing={standing} />,
        ],
      }))}
    />
  );
}

function Source({ source, standing }: { source: string; standing: string }) {
  return <span className="small soft">{words.source(source, standing)}</span>;
}

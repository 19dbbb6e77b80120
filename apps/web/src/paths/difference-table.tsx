import type { TreatmentPath } from '@archwright/protocol';
import { PlainTable } from '../look/plain-table.js';
import { pathWords as words } from '../words/paths.js';
import { differenceRows } from './difference-words.js';

/** In what one version differs from another. */
export function DifferenceTable({ before, after }: { before: TreatmentPath; after: TreatmentPath }) {
  const rows = differenceRows(before, after);
  return (
    <div className="stack-tight" aria-live="polite">
      <p>{words.differences(rows.length)}</p>
      {rows.length > 0 ? (
        <PlainTable
          label={words.differences(rows.length)}
          columns={Object.values(words.differenceColumns)}
          rows={rows.map(({ id, where, kind, before: was, after: is }) => ({
            id,
            head: where,
            cells: [words.differenceKinds[kind], was, is],
          }))}
        />
      ) : null}
    </div>
  );
}

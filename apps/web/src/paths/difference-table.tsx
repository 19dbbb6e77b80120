import { pathDifferences, type TreatmentPath } from '@archwright/protocol';
import { PlainTable } from '../look/plain-table.js';
import { pathWords as words } from '../words/paths.js';

/** In what one version differs from another. */
export function DifferenceTable({ before, after }: { before: TreatmentPath; after: TreatmentPath }) {
  const differences = pathDifferences(before, after);
  return (
    <div className="stack-tight" aria-live="polite">
      <p>{words.differences(differences.length)}</p>
      {differences.length > 0 ? (
        <PlainTable
          label={words.differences(differences.length)}
          columns={Object.values(words.differenceColumns)}
          rows={differences.map(({ at, kind, before: was, after: is }) => ({
            id: `${at} ${kind}`,
            head: <span className="breakable">{at}</span>,
            cells: [
              words.differenceKinds[kind],
              <span key="before" className="breakable">
                {was}
              </span>,
              <span key="after" className="breakable">
                {is}
              </span>,
            ],
          }))}
        />
      ) : null}
    </div>
  );
}

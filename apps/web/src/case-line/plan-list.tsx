import { lineWords } from '../words/line.js';
import type { PlanRow } from './plan-list-view.js';

/** The same as the drawing, as a table anyone can read, hear or print. */
export function PlanList({ rows, wishWord }: { rows: PlanRow[]; wishWord: string }) {
  return (
    <details className="details">
      <summary>{lineWords.asList}</summary>
      <div className="scroll-x">
        <table className="table">
          <caption className="unseen">{lineWords.captionVisit}</caption>
          <thead>
            <tr>
              <th scope="col">{lineWords.when}</th>
              <th scope="col">{lineWords.what}</th>
              <th scope="col">{lineWords.where}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key} className={row.kind === 'visit' ? undefined : 'small'}>
                <td>{row.when}</td>
                <td className={row.kind === 'visit' ? 'strong' : undefined}>
                  {row.what}
                  {row.againstWishes.length > 0 ? (
                    <span className="field-error"> {lineWords.against(wishWord, row.againstWishes)}</span>
                  ) : null}
                </td>
                <td>{row.where}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

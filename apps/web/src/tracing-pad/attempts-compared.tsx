import { padWords as words } from '../words/tracing-pad.js';
import './attempts-compared.css';
import { compareAttempts, type Attempts } from './attempts-view.js';

/** The attempts of a sitting side by side, and how far they agree; nothing while none of them has a drawing. */
export function AttemptsCompared(attempts: Attempts) {
  const { rows, spread } = compareAttempts(attempts);
  if (rows.every(({ drawing }) => drawing === null)) return null;
  const { attempt, drawing, form, angle, apex, closures } = words.compareColumns;
  return (
    <div className="stack-tight">
      <h3>{words.compare}</h3>
      <div className="scroll-x" role="region" tabIndex={0} aria-label={words.compare}>
        <table className="table compared">
          <thead>
            <tr>
              {[attempt, drawing, form, angle, apex, closures].map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key}>
                <th scope="row">{row.name}</th>
                <td>{row.drawing === null ? null : <img src={row.drawing} alt={words.drawingOf(row.name)} />}</td>
                <td>{row.form}</td>
                <td className="nowrap">{row.angle}</td>
                <td className="nowrap">{row.apex}</td>
                <td>{row.closures}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {spread === null ? null : (
        <p>
          {spread} <span className="soft small">{words.spreadNote}</span>
        </p>
      )}
    </div>
  );
}

import type { Ripple } from '@archwright/contracts';
import { CaseLineDrawing } from '../case-line/line-drawing.js';
import { layLines } from '../case-line/line-view.js';
import { lineBefore, lineOfPlan } from '../case-line/plan-view.js';
import { useWidth } from '../case-line/use-width.js';
import { changeWords as words } from '../words/case.js';
import { lineWords } from '../words/line.js';
import { labChanges, visitChanges, zoneOfRipple, type ChangeRow } from './ripple-view.js';
import './ripple.css';

function Changes({ rows }: { rows: ChangeRow[] }) {
  return (
    <table className="table ripple-table">
      <thead>
        <tr>
          <th scope="col">{lineWords.what}</th>
          <th scope="col">{words.before}</th>
          <th scope="col">{words.after}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            <td>
              <span className="strong">{row.what}</span>
              <div className="small soft">{row.detail}</div>
            </td>
            <td className="ripple-before">{row.before}</td>
            <td className="strong">{row.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface Props {
  ripple: Ripple;
  zone: string;
  today: string;
  viewer: string;
}

/** What a change would do: before in grey, after in ink, on one axis; then who has to know, and the same in words. */
export function RippleSheet({ ripple, zone, today, viewer }: Props) {
  const [attach, width] = useWidth(600);
  const drawnIn = zoneOfRipple(ripple, zone);
  const laid = layLines([lineBefore(ripple, drawnIn), lineOfPlan(ripple.plan, drawnIn, true)], width);
  const clock = { today, viewer };
  const visits = visitChanges(ripple, clock);
  const steps = labChanges(ripple, drawnIn, clock);
  return (
    <div className="stack" ref={attach}>
      <p className="strong">{words.summary(visits.length, steps.length, ripple.untouchedVisits)}</p>
      {laid ? (
        <div className="scroll-x" tabIndex={0} role="group" aria-label={words.beforeAfter}>
          {laid.rows.map((row, index) => (
            <div key={index === 0 ? 'before' : 'after'} className="ripple-row">
              <p className={index === 0 ? 'small soft' : 'small strong'}>{index === 0 ? words.before : words.after}</p>
              <CaseLineDrawing axis={laid.axis} row={row} levels={lineWords.levels} muted={index === 0} />
            </div>
          ))}
        </div>
      ) : null}
      <section className="stack-none">
        <h3>{words.toldTitle}</h3>
        {ripple.calls.length === 0 ? <p className="soft">{words.none}</p> : null}
        <ul className="stack-none">
          {ripple.calls.map((call) => (
            <li key={call.patientId}>
              <span className="strong">{call.patientName}</span>
              {call.byMail ? words.mailed(visits.length) : words.called(call.phone ?? words.noPhone, visits.length)}
            </li>
          ))}
        </ul>
      </section>
      {visits.length > 0 ? (
        <section className="stack-none">
          <h3>{words.visitsTitle}</h3>
          <div className="scroll-x">
            <Changes rows={visits} />
          </div>
        </section>
      ) : null}
      {steps.length > 0 ? (
        <details className="details">
          <summary>{words.labTitle(steps.length)}</summary>
          <div className="scroll-x">
            <Changes rows={steps} />
          </div>
        </details>
      ) : null}
    </div>
  );
}

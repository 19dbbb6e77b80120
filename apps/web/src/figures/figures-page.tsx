import { NotYet } from '../look/not-yet.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { longDate } from '../time/wording.js';
import { figureWords as words } from '../words/figures.js';
import { apart } from '../words/plural.js';
import { ControlChart } from './control-chart.js';
import './figures.css';
import { figuresSentence, shareView, usageGroups, valueView, type FigureView } from './figures-view.js';
import { useFigures } from './use-figures.js';

/** Promises, times, visits, remakes and missed visits as control charts, and the use of what the practice has. */
export function FiguresPage() {
  const figures = useFigures();
  if (!figures.data) {
    return <NotYet asked={figures} what={words.loading} />;
  }
  const { shares, values, use, today } = figures.data;
  const views = [...shares.map(shareView), ...values.map((figure) => valueView(figure, today))];
  return (
    <>
      <ScreenHead title={words.title} sentence={figuresSentence(figures.data)} />
      <div className="stack">
        <PracticePlaces />
        {views.map((view) =>
          view.sentence === null ? null : <Figure key={view.key} view={view} sentence={view.sentence} />,
        )}
        <NothingYet titles={views.filter(({ sentence }) => sentence === null).map(({ title }) => title)} />
        <section className="stack-tight" aria-labelledby="use">
          <h2 id="use">{words.use.title}</h2>
          <p className="soft">{words.use.sentence(longDate(use.fromOn, today), longDate(use.lastOn, today))}</p>
          {usageGroups(use.rows).map(({ title, rows }) => (
            <PlainTable
              key={title}
              label={title}
              columns={[title, ...Object.values(words.use.columns).slice(1)]}
              rows={rows.map(({ id, name, place, booked, open, used }) => ({
                id,
                head: name,
                cells: [place, booked, open, used],
              }))}
            />
          ))}
        </section>
      </div>
    </>
  );
}

function Figure({ view: { key, title, chart, columns, rows }, sentence }: { view: FigureView; sentence: string }) {
  return (
    <section className="stack-tight" aria-labelledby={key}>
      <h2 id={key}>{title}</h2>
      <p>{sentence}</p>
      <div className="sheet sheet-pad">
        <ControlChart label={words.pictureOf(title, sentence)} view={chart} />
      </div>
      <details className="details">
        <summary>{words.table}</summary>
        <PlainTable label={title} columns={columns} rows={rows} />
      </details>
    </section>
  );
}

function NothingYet({ titles }: { titles: readonly string[] }) {
  if (titles.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="nothing-yet">
      <h2 id="nothing-yet">{words.noneTitle}</h2>
      <p className="soft">{words.none(apart(titles))}</p>
    </section>
  );
}

import type { DisturbanceView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { DeskPlaces } from '../desk-day/desk-places.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { disturbanceWords as words } from '../words/disturbances.js';
import { isUndecided, timeOf } from './disturbance-view.js';
import { EnterForm } from './enter-form.js';
import { useDisturbances } from './use-disturbances.js';

function Entered({ title, items, today }: { title: string; items: DisturbanceView[]; today: string }) {
  if (items.length === 0) return null;
  return (
    <section className="sheet sheet-pad stack-tight">
      <h2>{title}</h2>
      <ul className="stack-none">
        {items.map((item) => (
          <li key={item.id} className="row">
            <Link to="/desk/falls-away/$disturbanceId" params={{ disturbanceId: item.id }} className="action">
              {item.label}
            </Link>
            <span>{timeOf(item, today)}</span>
            <Tag tone={isUndecided(item) ? 'caution' : 'plain'}>{words.states[item.state]}</Tag>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Absences, breakdowns and closures: what has been entered, and a way to enter another. */
export function DisturbancesPage() {
  const { role } = useSession();
  const { practice, list, subjects, enter } = useDisturbances();
  const items = list.data?.items ?? [];
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <DeskPlaces />
        <div className="stack column">
          <Refusal error={enter.error ?? list.error ?? subjects.error} />
          {may.enterDisturbances(role) && subjects.data ? (
            <EnterForm
              subjects={subjects.data}
              today={practice.today}
              pending={enter.isPending}
              onEnter={(body) => {
                enter.mutate(body);
              }}
            />
          ) : null}
          {list.data === undefined && !list.error ? <FirstWait what={words.loading} /> : null}
          {list.data && items.length === 0 ? <Empty>{words.none}</Empty> : null}
          <Entered title={words.undecided} items={items.filter(isUndecided)} today={practice.today} />
          <Entered title={words.decided} items={items.filter((item) => !isUndecided(item))} today={practice.today} />
        </div>
      </div>
    </>
  );
}

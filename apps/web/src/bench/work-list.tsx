import { NativeSelect } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Refusal } from '../look/notice.js';
import { Empty, Waiting } from '../look/screen.js';
import { benchWords as words } from '../words/bench.js';
import { ticketWords } from '../words/tickets.js';
import { DISPATCH_ORDER, toldWords } from '../words/told.js';
import { dispatchRows, workTitle } from './bench-view.js';
import type { useBench } from './use-bench.js';
import { WorkStep } from './work-step.js';

interface Props {
  dispatch: ReturnType<typeof useBench>['dispatch'];
  centres: { id: string; name: string }[];
  centre: string | undefined;
  on: string;
  today: string;
  onCentre: (centre: string | undefined) => void;
}

/** The work of one day at one work centre or at all, in the order in which it is to be done. */
export function WorkList({ dispatch, centres, centre, on, today, onCentre }: Props) {
  const { role } = useSession();
  const [said, setSaid] = useState('');
  const centreName = centres.find(({ id }) => id === centre)?.name ?? null;
  const rows = dispatch.data ? dispatchRows(dispatch.data, today) : [];
  return (
    <section className="stack-tight" aria-labelledby="work-list">
      <div className="row">
        <h2 id="work-list">{workTitle(centreName, on, today)}</h2>
        {dispatch.data && rows.length > 0 ? (
          <Link
            className="push no-print small"
            to="/bench/tickets"
            search={{ lab: dispatch.data.laboratoryId, on, ...(centre ? { centre } : {}) }}
          >
            {ticketWords.link}
          </Link>
        ) : null}
        <NativeSelect
          className={rows.length > 0 ? 'no-print' : 'push no-print'}
          size="xs"
          aria-label={words.centreChoice}
          value={centre ?? ''}
          data={[
            { value: '', label: words.everyCentre },
            ...centres.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(event) => {
            onCentre(event.currentTarget.value || undefined);
          }}
        />
      </div>
      {dispatch.data ? (
        <p className="small soft">
          {toldWords(dispatch.data.told)} {toldWords(DISPATCH_ORDER)}
        </p>
      ) : null}
      <p role="status" className={said ? 'notice notice-go' : 'unseen'}>
        {said}
      </p>
      <Refusal error={dispatch.error} onRetry={() => void dispatch.refetch()} />
      <Waiting busy={dispatch.isPlaceholderData}>
        <ol className="sheet lines">
          {dispatch.data && rows.length === 0 ? (
            <li>
              <Empty>{words.noWork}</Empty>
            </li>
          ) : null}
          {rows.map((row) => (
            <WorkStep key={row.id} row={row} mayAct={may.workAtBench(role)} today={today} onDone={setSaid} />
          ))}
        </ol>
      </Waiting>
    </section>
  );
}

import { NativeSelect } from '@mantine/core';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { DayPicker } from '../look/day-picker.js';
import { Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { benchWords as words } from '../words/bench.js';
import './bench.css';
import { dayHeads, dispatchRows, loadRows, workTitle } from './bench-view.js';
import { LoadTable } from './load-table.js';
import { RiskList } from './risk-list.js';
import { useBench } from './use-bench.js';
import { WorkStep } from './work-step.js';

/** The laboratory's load, what is at risk, and the work of one day in its order. */
export function BenchPage() {
  const search = useSearch({ from: '/inside/bench' });
  const navigate = useNavigate();
  const { role, laboratoryIds } = useSession();
  const { practice, laboratories, laboratoryId, from, on, load, dispatch, act } = useBench(
    { lab: search.lab, from: search.from, on: search.on, centre: search.centre },
    laboratoryIds,
  );
  if (laboratoryId === undefined) return <Notice tone="caution">{words.noLab}</Notice>;
  const lab = practice.laboratories.find((one) => one.id === laboratoryId);
  const centreName = lab?.workCentres.find((centre) => centre.id === search.centre)?.name ?? null;
  const go = (change: Partial<typeof search>): void => {
    void navigate({ to: '/bench', search: { ...search, ...change }, resetScroll: false });
  };
  const stale = hasStatus(act.error, 412);

  return (
    <>
      <ScreenHead title={words.title(lab?.name ?? '')} sentence={load.data?.sentence}>
        {laboratories.length > 1 ? (
          <NativeSelect
            aria-label={words.lab}
            value={laboratoryId}
            data={laboratories.map((one) => ({ value: one.id, label: one.name }))}
            onChange={(event) => {
              void navigate({ to: '/bench', search: { lab: event.currentTarget.value } });
            }}
          />
        ) : null}
        <DayPicker
          day={from}
          today={practice.today}
          step={7}
          onPick={(day) => {
            go({ from: day, on: day });
          }}
        />
      </ScreenHead>
      <div className="stack">
        <Refusal error={load.error} onRetry={() => void load.refetch()} />
        {load.isPending ? <FirstWait what={words.loading} /> : null}
        {load.data ? (
          <Waiting busy={load.isPlaceholderData}>
            <div className="stack-tight">
              <LoadTable
                heads={dayHeads(load.data)}
                rows={loadRows(load.data)}
                on={on}
                centre={search.centre}
                onPick={(centre, day) => {
                  void navigate({
                    to: '/bench',
                    search: { lab: laboratoryId, from, on: day, ...(centre ? { centre } : {}) },
                    resetScroll: false,
                  });
                }}
              />
              <p className="small soft">{words.key}</p>
            </div>
          </Waiting>
        ) : null}
        <div className="bench-lists">
          <RiskList atRisk={load.data?.atRisk ?? []} mayOpen={may.seeVisits(role)} />
          <section className="stack-tight" aria-labelledby="work-list">
            <h2 id="work-list">{workTitle(centreName, on, practice.today)}</h2>
            {dispatch.data ? (
              <p className="small soft">
                {dispatch.data.sentence} {dispatch.data.order}
              </p>
            ) : null}
            {stale ? (
              <Notice tone="caution">{words.stale}</Notice>
            ) : (
              <Refusal error={dispatch.error ?? act.error} onRetry={() => void dispatch.refetch()} />
            )}
            <Waiting busy={dispatch.isPlaceholderData}>
              <ul className="sheet lines">
                {dispatch.data?.steps.length === 0 ? (
                  <li>
                    <Empty>{words.noWork}</Empty>
                  </li>
                ) : null}
                {(dispatch.data ? dispatchRows(dispatch.data, practice.today) : []).map((row) => (
                  <WorkStep
                    key={row.id}
                    row={row}
                    mayAct={may.workAtBench(role)}
                    pending={act.isPending && act.variables.id === row.id}
                    onAct={(action) => {
                      act.mutate({ id: row.id, version: row.version, action });
                    }}
                  />
                ))}
              </ul>
            </Waiting>
          </section>
        </div>
      </div>
    </>
  );
}

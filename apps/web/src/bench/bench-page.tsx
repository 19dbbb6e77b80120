import { NativeSelect } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { openAlerts, useAlerts } from '../alerts/open-alerts.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { AfterTop } from '../look/after-top.js';
import { DayPicker } from '../look/day-picker.js';
import { Notice, Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { benchWords as words } from '../words/bench.js';
import { deskWords } from '../words/desk.js';
import { labOrderWords } from '../words/lab-orders.js';
import { remakeLogWords } from '../words/remake-log.js';
import { toldWords } from '../words/told.js';
import { WorkloadPanel } from '../workload/workload-panel.js';
import './bench.css';
import { dayHeads, loadRows } from './bench-view.js';
import { LoadTable } from './load-table.js';
import { PauseList } from './pause-list.js';
import { RiskList } from './risk-list.js';
import { useBench } from './use-bench.js';
import { WorkList } from './work-list.js';

/** The laboratory's load, what is at risk, and the work of one day in its order. */
export function BenchPage() {
  const search = useSearch({ from: '/inside/bench' });
  const navigate = useNavigate();
  const { laboratoryIds, role } = useSession();
  const alerts = useAlerts();
  const { today, laboratories, laboratory, centre, from, on, load, dispatch } = useBench(search, laboratoryIds);
  if (laboratory === undefined) return <Notice tone="caution">{words.noLab}</Notice>;
  const show = (day: string, shownCentre: string | undefined, first = from): void => {
    const shown = { lab: laboratory.id, from: first, on: day, ...(shownCentre ? { centre: shownCentre } : {}) };
    void navigate({ to: '/bench', search: shown, resetScroll: false });
  };

  const atRisk = load.data?.atRisk ?? [];
  const pauses = openAlerts(alerts.data?.items ?? [], laboratory.zone, today);
  const warns = atRisk.length + pauses.length > 0;
  // The lists wait for what stands above and beside them, so that nothing jumps away under a finger.
  const isWhole = !load.isPending && !alerts.isPending;

  return (
    <>
      <ScreenHead title={words.title(laboratory.name)} sentence={load.data && toldWords(load.data.told)}>
        {role === 'lab' ? <Link to="/bench/parcels">{deskWords.subPlaces.parcels}</Link> : null}
        {role === 'lab' ? <Link to="/bench/orders">{labOrderWords.linkAtLab}</Link> : null}
        <Link to="/bench/remakes">{remakeLogWords.link}</Link>
        {laboratories.length > 1 ? (
          <NativeSelect
            aria-label={words.lab}
            value={laboratory.id}
            data={laboratories.map((one) => ({ value: one.id, label: one.name }))}
            onChange={(event) => {
              void navigate({ to: '/bench', search: { lab: event.currentTarget.value } });
            }}
          />
        ) : null}
        <DayPicker
          day={from}
          today={today}
          step={7}
          onPick={(day) => {
            show(day, centre, day);
          }}
        />
      </ScreenHead>
      <div className="stack">
        <Refusal error={load.error ?? alerts.error} onRetry={() => void load.refetch()} />
        {load.isPending ? <FirstWait what={words.loading} /> : null}
        {load.data ? (
          <Waiting busy={load.isPlaceholderData}>
            <div className="stack-tight">
              <LoadTable
                heads={dayHeads(load.data)}
                rows={loadRows(load.data)}
                on={on}
                centre={centre}
                onPick={(picked, day) => {
                  show(day, picked);
                }}
              />
              <p className="small soft">{words.key}</p>
            </div>
          </Waiting>
        ) : null}
        <AfterTop>
          {isWhole ? (
            <>
              <div className={warns ? 'bench-lists' : undefined}>
                {warns ? (
                  <div className="stack">
                    <PauseList rows={pauses} />
                    <RiskList atRisk={atRisk} laboratoryId={laboratory.id} from={from} />
                  </div>
                ) : null}
                <WorkList
                  dispatch={dispatch}
                  centres={laboratory.workCentres}
                  centre={centre}
                  on={on}
                  today={today}
                  onCentre={(picked) => {
                    show(on, picked);
                  }}
                />
              </div>
              <WorkloadPanel key={laboratory.id} laboratory={laboratory} today={today} mayAct={may.workAtBench(role)} />
            </>
          ) : null}
        </AfterTop>
      </div>
    </>
  );
}

import { Button } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import type { FreedTimeTaker } from '@archwright/contracts';
import { DeskPlaces } from '../desk-day/desk-places.js';
import { Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { RippleSheet } from '../ripple/ripple-sheet.js';
import { viewerZone } from '../time/zone.js';
import { freedWords as words } from '../words/freed-time.js';
import { FreedForm } from './freed-form.js';
import { takerRow } from './freed-time-view.js';
import { TakerCard } from './taker-card.js';
import { useFreedTime } from './use-freed-time.js';

/** Who gains most by time that has become free; nothing changes before somebody agreed on the telephone. */
export function FreedTimePage() {
  const search = useSearch({ from: '/inside/desk/freed-time' });
  const navigate = useNavigate();
  const [chosen, setChosen] = useState<string | null>(null);
  const { practice, found, preview, apply } = useFreedTime(search);
  const view = found.data;
  const takers = view?.takers.filter(({ caseId }) => caseId !== search.left) ?? [];

  function look(taker: FreedTimeTaker): void {
    setChosen(taker.appointmentId);
    apply.reset();
    preview.mutate(taker);
  }

  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <DeskPlaces />
        <FreedForm
          practice={practice}
          search={search}
          onAsk={(next) => {
            void navigate({ to: '/desk/freed-time', search: next });
          }}
        />
        {apply.data ? (
          <Notice tone="go">
            {words.done(apply.data.number)} <Link to="/desk/calls">{words.calls}</Link>
          </Notice>
        ) : null}
        <Refusal error={found.error} onRetry={() => void found.refetch()} />
        {found.isEnabled || apply.data ? null : (
          <div className="sheet">
            <Empty>{words.start}</Empty>
          </div>
        )}
        {found.isFetching ? <FirstWait what={words.loading} /> : null}
        {view && !apply.data ? (
          <section className="stack-tight">
            <p className="soft">{words.looked(view.casesLookedAt, view.casesLeftOut)}</p>
            <ol className="sheet lines">
              {takers.length === 0 ? (
                <li>
                  <Empty>{words.none}</Empty>
                </li>
              ) : null}
              {takers.map((taker) => (
                <TakerCard
                  key={taker.appointmentId}
                  row={takerRow(taker, view.zone, practice.today)}
                  pending={preview.isPending && chosen === taker.appointmentId}
                  onPreview={() => {
                    look(taker);
                  }}
                >
                  {chosen === taker.appointmentId && preview.data ? (
                    <div className="stack">
                      <RippleSheet
                        ripple={preview.data}
                        zone={view.zone}
                        today={practice.today}
                        viewer={viewerZone()}
                      />
                      <Refusal error={apply.error} />
                      <div className="row">
                        <Button
                          loading={apply.isPending}
                          onClick={() => {
                            apply.mutate(preview.data);
                          }}
                        >
                          {words.apply}
                        </Button>
                        <Button
                          variant="subtle"
                          onClick={() => {
                            setChosen(null);
                          }}
                        >
                          {words.hide}
                        </Button>
                      </div>
                    </div>
                  ) : null}
                </TakerCard>
              ))}
            </ol>
            <Refusal error={preview.error} />
          </section>
        ) : null}
      </div>
    </>
  );
}

import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import type { AftercareView, CaseView } from '@archwright/contracts';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Notice, Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { adjustmentWords, aftercareWords as words } from '../words/aftercare.js';
import { AdjustmentForm } from './adjustment-form.js';
import './aftercare.css';
import { adjustmentRows, regionStates, spotRows, type RegionState } from './aftercare-view.js';
import { ArchMap } from './arch-map.js';
import { LaterChecks } from './later-checks.js';
import { RegionList } from './region-list.js';
import { Adjustments, SpotCard } from './spot-card.js';
import { SpotForm } from './spot-form.js';
import { useAftercare } from './use-aftercare.js';

/** What follows a placement, once it is known. */
export function AftercarePage() {
  const { caseId } = useParams({ from: '/inside/chair/cases/$caseId/aftercare' });
  const used = useAftercare(caseId);
  const { view, aftercare } = used;
  if (view.data && aftercare.data) return <Known known={view.data} after={aftercare.data} {...used} />;
  const again = (): void => {
    void view.refetch();
    void aftercare.refetch();
  };
  const error = view.error ?? aftercare.error;
  return error ? <Refusal error={error} onRetry={again} /> : <FirstWait what={words.loading} />;
}

type KnownProps = { known: CaseView; after: AftercareView } & ReturnType<typeof useAftercare>;

/** The map of sore spots, the spots themselves, adjustments and later checks. */
function Known({ known, after, find, adjust, heal, refer }: KnownProps) {
  const { role } = useSession();
  const [chosen, setChosen] = useState<RegionState | null>(null);
  const mayTreat = may.treat(role);
  const calendar = { zone: known.zone, today: after.on };
  const arches = known.arches.map(({ arch }) => arch);
  const regions = regionStates(arches, after.soreSpots);
  const rows = spotRows(after.soreSpots, calendar);
  const others = adjustmentRows(after.otherAdjustments, calendar);
  const isOther = adjust.variables?.soreSpotId === null;
  const choose = mayTreat
    ? (region: RegionState): void => {
        find.reset();
        setChosen(region);
      }
    : null;

  return (
    <div className="roomy">
      <ScreenHead title={words.title(known.number)} sentence={words.head(known.patient.name, after.sentence)}>
        {mayTreat ? (
          <Link to="/chair/cases/$caseId/cautions" params={{ caseId: known.id }} className="action">
            {words.cautions}
          </Link>
        ) : null}
        <Link to="/desk/cases/$caseId" params={{ caseId: known.id }} className="action">
          {words.back}
        </Link>
      </ScreenHead>
      <div className="stack">
        <section className="sheet sheet-pad stack-tight" aria-labelledby="map">
          <h2 id="map">{words.map}</h2>
          {mayTreat ? <p className="soft">{words.mapHint}</p> : null}
          <div className="arch-maps">
            {arches.map((arch) => (
              <ArchMap
                key={arch}
                arch={arch}
                regions={regions.filter((region) => region.arch === arch)}
                chosen={chosen}
                onChoose={choose}
              />
            ))}
          </div>
          <RegionList regions={regions} onChoose={choose} />
        </section>
        {chosen ? (
          <SpotForm
            key={`${chosen.arch} ${chosen.region}`}
            region={chosen}
            today={after.on}
            pending={find.isPending}
            error={find.error}
            onRecord={(body) => {
              find.mutate(body, {
                onSuccess: () => {
                  setChosen(null);
                },
              });
            }}
            onClose={() => {
              setChosen(null);
            }}
          />
        ) : null}
        <Notice tone="caution">
          {after.caution.text} <span className="small soft">({after.caution.source})</span>
        </Notice>
        <div className="beside">
          <section className="stack-tight" aria-labelledby="spots">
            <h2 id="spots">{words.spots}</h2>
            <ul className="sheet lines">
              {rows.length === 0 ? (
                <li>
                  <Empty>{words.noSpots}</Empty>
                </li>
              ) : null}
              {rows.map((row) => (
                <SpotCard key={row.id} row={row} mayTreat={mayTreat} adjust={adjust} heal={heal} refer={refer} />
              ))}
            </ul>
          </section>
          <div className="stack">
            <section className="sheet sheet-pad stack-tight" aria-labelledby="adjustments">
              <h2 id="adjustments">{words.adjustments}</h2>
              {others.length === 0 ? <p className="soft">{words.noAdjustments}</p> : <Adjustments rows={others} />}
              {mayTreat ? (
                <AdjustmentForm
                  arches={arches}
                  soreSpotId={null}
                  summary={adjustmentWords.adjust}
                  pending={isOther && adjust.isPending}
                  error={isOther ? adjust.error : null}
                  onRecord={(body, done) => {
                    adjust.mutate(body, { onSuccess: done });
                  }}
                />
              ) : null}
            </section>
            <LaterChecks after={after} />
          </div>
        </div>
      </div>
    </div>
  );
}

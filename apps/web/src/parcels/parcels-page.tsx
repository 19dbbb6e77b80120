import { Link } from '@tanstack/react-router';
import { DeskPlaces } from '../desk-day/desk-places.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { practiceZone } from '../time/practice-zone.js';
import { labCaseWords } from '../words/bench.js';
import { objectWords, parcelWords as words } from '../words/parcels.js';
import { ObjectItem } from './object-item.js';
import { PackForm } from './pack-form.js';
import { ParcelCard } from './parcel-card.js';
import { objectRows, parcelRows } from './parcels-view.js';
import { RegisterForm } from './register-form.js';
import { useParcels } from './use-parcels.js';

/** Parcels in and out, and the things that travel in them, at the clinic's end or the laboratory's. */
export function ParcelsPage() {
  const session = useSession();
  const { practice, parcels, objects, pack, act, reconcile, register, declare, deed } = useParcels();
  const isLab = session.role === 'lab';
  const works = isLab || may.actOnVisits(session.role);
  const clinics = practice.clinics;
  const laboratories = practice.laboratories.filter(({ id }) => !isLab || session.laboratoryIds.includes(id));
  const zone = (isLab ? laboratories[0]?.zone : undefined) ?? practiceZone(practice);
  const clock = { zone, today: practice.today };
  const rows = parcelRows(parcels.data ?? [], session);
  const things = objectRows(objects.data ?? [], session, clock, clinics);
  const waits = (turn: 'receive' | 'check') => rows.filter((row) => row.turn === turn).length;
  return (
    <>
      <ScreenHead
        title={words.title}
        sentence={parcels.data ? words.sentence(waits('receive'), waits('check')) : undefined}
      >
        {isLab ? <Link to="/bench">{labCaseWords.back}</Link> : null}
      </ScreenHead>
      <div className="stack">
        {isLab ? null : <DeskPlaces />}
        <Refusal error={parcels.error ?? objects.error} onRetry={() => void parcels.refetch()} />
        <div className="beside">
          <div className="stack">
            <section className="stack-tight" aria-labelledby="parcels">
              <h2 id="parcels">{words.parcels}</h2>
              {parcels.isPending ? <FirstWait what={words.loading} /> : null}
              <ul className="sheet lines">
                {parcels.data && rows.length === 0 ? (
                  <li>
                    <Empty>{words.noParcels}</Empty>
                  </li>
                ) : null}
                {rows.map((row) => (
                  <ParcelCard key={row.id} row={row} act={act} reconcile={reconcile} />
                ))}
              </ul>
            </section>
            <section className="stack-tight" aria-labelledby="things">
              <h2 id="things">{objectWords.title}</h2>
              <ul className="sheet lines">
                {objects.data && things.length === 0 ? (
                  <li>
                    <Empty>{objectWords.none}</Empty>
                  </li>
                ) : null}
                {things.map((row) => (
                  <ObjectItem key={row.id} row={row} clock={clock} declare={declare} deed={deed} />
                ))}
              </ul>
            </section>
          </div>
          {works ? (
            <div className="stack">
              <RegisterForm
                holders={isLab ? laboratories : clinics.filter(({ id }) => session.clinicIds.includes(id))}
                end={isLab ? 'laboratoryId' : 'clinicId'}
                pending={register.isPending}
                error={register.error}
                registered={register.data}
                onRegister={register.mutate}
              />
              <PackForm
                direction={isLab ? 'to-clinic' : 'to-lab'}
                clinics={clinics}
                laboratories={laboratories}
                pending={pack.isPending}
                error={pack.error}
                isPacked={pack.isSuccess}
                onPack={(body, done) => {
                  pack.mutate(body, { onSuccess: done });
                }}
              />
            </div>
          ) : null}
        </div>
      </div>
    </>
  );
}

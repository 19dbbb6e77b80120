import { Button } from '@mantine/core';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import type { Ripple } from '@archwright/contracts';
import { hasStatus } from '../api/errors.js';
import { canFallAway } from '../disturbances/lost-visit-view.js';
import { keepDraft } from '../drafts/kept-drafts.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { freedBy } from '../freed-time/freed-time-view.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { RippleSheet } from '../ripple/ripple-sheet.js';
import { viewerZone } from '../time/zone.js';
import { caseWords, changeWords as words } from '../words/case.js';
import { lostVisitWords } from '../words/lost.js';
import { changeKey } from './change-draft.js';
import { ChangeForm } from './change-form.js';
import { visitOf } from './change-visit-view.js';
import { useChangeVisit } from './use-change-visit.js';

/** Moves or cancels one visit: first what would change, then, on a word, the change. */
export function ChangeVisitPage() {
  const { caseId, appointmentId } = useParams({ from: '/inside/desk/cases/$caseId/visits/$appointmentId' });
  const { role } = useSession();
  const navigate = useNavigate();
  const { practice, view, alternatives, appointment, move, cancel, apply } = useChangeVisit(caseId, appointmentId);
  const [preview, setPreview] = useState<Ripple | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (preview) heading.current?.focus();
  }, [preview]);

  if (!view.data) {
    return <NotYet asked={view} what={caseWords.loading} />;
  }
  const visit = visitOf(view.data, appointmentId, practice.today);
  const back = (
    <Link to="/desk/cases/$caseId" params={{ caseId }}>
      {words.leave}
    </Link>
  );
  if (!visit) {
    return (
      <div className="stack">
        <Notice tone="caution">{words.gone}</Notice>
        {back}
      </div>
    );
  }
  const stale = hasStatus(apply.error, 409);
  const shown = { onSuccess: setPreview };
  const ask = (): void => {
    setPreview(null);
    apply.reset();
  };
  return (
    <>
      <ScreenHead
        title={visit.isMissed ? words.anewTitle(visit.title) : words.title(visit.title)}
        sentence={words.sentence(visit.when, view.data.patient.name, visit.isMissed)}
      >
        {may.enterDisturbances(role) && appointment.data && canFallAway(appointment.data) ? (
          <Link to="/desk/falls-away/visits/$appointmentId" params={{ appointmentId }}>
            {lostVisitWords.link}
          </Link>
        ) : null}
        {back}
      </ScreenHead>
      <div className="stack">
        <ChangeForm
          appointmentId={appointmentId}
          visit={visit}
          zone={view.data.zone}
          today={practice.today}
          alternatives={alternatives.data}
          isLooking={alternatives.isPending}
          pending={move.isPending || cancel.isPending}
          onEdit={ask}
          onMove={(body) => {
            ask();
            cancel.reset();
            move.mutate(body, shown);
          }}
          onCancel={(body) => {
            ask();
            move.reset();
            cancel.mutate(body, shown);
          }}
        />
        <Refusal error={move.error ?? cancel.error} />
        {preview ? (
          <section className="sheet sheet-pad stack" aria-labelledby="ripple">
            <h2 id="ripple" ref={heading} tabIndex={-1}>
              {words.previewTitle}
            </h2>
            <RippleSheet ripple={preview} zone={view.data.zone} today={practice.today} viewer={viewerZone()} />
            {stale ? <Notice tone="caution">{words.stale}</Notice> : <Refusal error={apply.error} />}
            <div className="row">
              <Button
                loading={apply.isPending}
                disabled={stale}
                onClick={() => {
                  apply.mutate(preview, {
                    onSuccess: () => {
                      keepDraft(changeKey(appointmentId), null);
                      void navigate({
                        to: '/desk/cases/$caseId',
                        params: { caseId },
                        search: appointment.data && !visit.isMissed ? freedBy(appointment.data) : {},
                      });
                    },
                  });
                }}
              >
                {words.apply}
              </Button>
              {back}
            </div>
          </section>
        ) : null}
      </div>
    </>
  );
}

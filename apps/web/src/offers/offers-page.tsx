import { Button } from '@mantine/core';
import type { ConfirmHold } from '@archwright/contracts';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { Legend } from '../case-line/legend.js';
import { layLines } from '../case-line/line-view.js';
import { planRows } from '../case-line/plan-list-view.js';
import { lineOfPlan } from '../case-line/plan-view.js';
import { useWidth } from '../case-line/use-width.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { NotYet } from '../look/not-yet.js';
import { Notice, Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { viewerZone } from '../time/zone.js';
import { wishSentence } from '../wishes/wishes-view.js';
import { caseWords, offerWords as words } from '../words/case.js';
import { HoldBar } from './hold-bar.js';
import { OfferSheet } from './offer-sheet.js';
import './offers.css';
import { deliveryWords, firmChoices, offersOfConflict, visitLines, zoneOfPlan } from './offers-view.js';
import { useOffers } from './use-offers.js';
import { WhyNotSheet } from './why-not.js';

const SIDE_PX = 322;
const LEAST_PX = 620;

/** Complete offers on one common axis; holding, confirming, or loosening what stands in the way. */
export function OffersPage() {
  const { caseId } = useParams({ from: '/inside/desk/cases/$caseId/offers' });
  const navigate = useNavigate();
  const { role } = useSession();
  const { review } = useSearch({ from: '/inside/desk/cases/$caseId/offers' });
  const state = useOffers(caseId, review);
  const [attach, width] = useWidth(LEAST_PX);
  const { practice, view, offers, held, hold, confirm, release } = state;
  if (!view.data) {
    return <NotYet asked={view} what={caseWords.loading} />;
  }
  const { zone, number, title, patient, wishes } = view.data;
  const list = offers.data?.offers ?? [];
  const drawingPx = width > 1040 ? width - SIDE_PX : width - 2;
  const laid = layLines(
    list.map((offer) => lineOfPlan(offer.plan, zoneOfPlan(offer.plan, zone), false)),
    drawingPx,
  );
  const earlier = held === null ? view.data.hold : null;
  const refusal = [hold.error, confirm.error, release.error].find((error) => error && !offersOfConflict(error));

  function confirmHold(holdId: string, planHash: string, firm: ConfirmHold['firm']): void {
    confirm.mutate(
      { id: holdId, planHash, firm },
      { onSuccess: () => void navigate({ to: '/desk/cases/$caseId', params: { caseId } }) },
    );
  }
  const again = (): void => {
    void offers.refetch();
    void view.refetch();
  };

  return (
    <>
      <ScreenHead title={words.title(number, title)} sentence={words.head(patient.name, wishSentence(wishes))}>
        <Link to="/desk/cases/$caseId" params={{ caseId }}>
          {words.back}
        </Link>
        <Button variant="default" onClick={again} disabled={held !== null}>
          {words.again}
        </Button>
      </ScreenHead>
      <div className="stack" ref={attach}>
        {state.wasTaken ? <Notice tone="caution">{words.conflict}</Notice> : null}
        <Refusal error={refusal ?? offers.error} onRetry={offers.error ? again : undefined} />
        {state.request.relax ? (
          <Notice tone="plain">
            {words.relaxed}{' '}
            <Button
              variant="subtle"
              size="compact-sm"
              onClick={() => {
                state.setRequest(state.firstRequest);
              }}
            >
              {words.unrelax}
            </Button>
          </Notice>
        ) : null}
        {earlier ? (
          <div className="sheet sheet-pad">
            <HoldBar
              expiresAt={earlier.expiresAt}
              choices={[]}
              pending={confirm.isPending}
              onConfirm={(firm) => {
                confirmHold(earlier.id, earlier.planHash, firm);
              }}
              onRelease={() => {
                release.mutate(earlier.id);
              }}
              onAgain={again}
            />
          </div>
        ) : null}
        {offers.isPending ? <FirstWait what={words.loading} /> : null}
        {offers.data ? (
          <p className="soft" role="status">
            {held ? words.heldSentence : list.length > 0 ? words.sentence(list.length) : words.none}
          </p>
        ) : null}
        <Waiting busy={offers.isFetching}>
          <div className="stack">
            {laid
              ? list.map((offer, index) => (
                  <OfferSheet
                    key={offer.id}
                    offer={offer}
                    number={index + 1}
                    axis={laid.axis}
                    row={laid.rows[index] ?? { heightPx: 0, clinicY: 0, labY: 0, track: [], discs: [], bars: [] }}
                    visits={visitLines(offer.plan, { today: practice.today, viewer: viewerZone() })}
                    rows={planRows(offer.plan, zoneOfPlan(offer.plan, zone), practice.today, viewerZone())}
                    delivery={deliveryWords(offer.plan, practice.today)}
                  >
                    {held?.offerId === offer.id ? (
                      <HoldBar
                        expiresAt={held.hold.expiresAt}
                        choices={firmChoices(held.hold.plan)}
                        pending={confirm.isPending}
                        onConfirm={(firm) => {
                          confirmHold(held.hold.id, held.hold.planHash, firm);
                        }}
                        onRelease={() => {
                          release.mutate(held.hold.id);
                        }}
                        onAgain={again}
                      />
                    ) : null}
                    {held === null && earlier === null && may.keepDesk(role) ? (
                      <div className="row">
                        {(['phone', 'provisional'] as const).map((kind) => (
                          <Button
                            key={kind}
                            variant={kind === 'phone' ? 'filled' : 'default'}
                            loading={
                              hold.isPending && hold.variables.offerId === offer.id && hold.variables.kind === kind
                            }
                            disabled={hold.isPending}
                            onClick={() => {
                              hold.mutate({ offerId: offer.id, kind });
                            }}
                          >
                            {kind === 'phone' ? words.hold : words.holdLonger}
                          </Button>
                        ))}
                      </div>
                    ) : null}
                  </OfferSheet>
                ))
              : null}
            {laid ? <Legend wishes /> : null}
            {offers.data?.whyNot ? (
              <WhyNotSheet
                whyNot={offers.data.whyNot}
                today={practice.today}
                onRelax={(relax) => {
                  state.setRequest({ ...state.request, relax });
                }}
              />
            ) : null}
          </div>
        </Waiting>
      </div>
    </>
  );
}

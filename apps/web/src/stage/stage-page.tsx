import type { StageView } from '@archwright/contracts';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useMemo } from 'react';
import { CaseAtChair } from '../case-page/case-at-chair.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Notice } from '../look/notice.js';
import { AfterTop } from '../look/after-top.js';
import { latePart } from '../look/late-part.js';
import { ScreenHead } from '../look/screen.js';
import { PhotographPanel } from '../photographs/photograph-panel.js';
import { StageFindings } from '../screening/stage-findings.js';
import { birthDate } from '../time/wording.js';
import { stageWords as words } from '../words/chair.js';
import { toldWords } from '../words/told.js';
import { TeethPanel } from '../teeth/teeth-panel.js';
import { useEvaluator } from '../tracing-pad/use-evaluator.js';
import { VerticalPanel } from '../vertical/vertical-panel.js';
import { CaptureForm } from './capture-form.js';
import { readCapture } from './capture-view.js';
import { CompleteForm } from './complete-form.js';
import { liveFindings, savedFindings } from './finding-view.js';
import { Gates } from './gates.js';
import { PrescriptionForm } from './prescription-form.js';
import { RaiseAlert } from './raise-alert.js';
import { SectionList } from './section-list.js';
import './stage.css';
import { useDraft } from './use-draft.js';
import { useStage } from './use-stage.js';
import { VerdictHistory } from './verdict-history.js';
import { Verdicts } from './verdicts.js';
import { VisitBar } from './visit-bar.js';
import { isBegun, isClosed, isOver, judgesJawRelation, mayComplete, sectionsOf } from './visit-steps.js';

const SendOrder = latePart(words.order, async () => (await import('../lab-orders/send-order.js')).SendOrder);

/** One visit's work at the chair, once it is known which. */
export function StagePage() {
  const { stageId } = useParams({ from: '/inside/chair/stages/$stageId' });
  const used = useStage(stageId);
  const { stage } = used;
  if (stage.data) return <Work view={stage.data} {...used} />;
  return <NotYet asked={stage} what={words.loading} />;
}

type WorkProps = { view: StageView } & ReturnType<typeof useStage>;

/** Cautions, checklist, measurements with live verdicts, gates, hand-over, and the visit around them. */
function Work({ view, practice, capture, screw, override, complete, prescribe, act, raise }: WorkProps) {
  const navigate = useNavigate();
  const { role } = useSession();
  const draft = useDraft(view);
  const { typed } = draft;
  const evaluator = useEvaluator(typed.tracings.some(({ points }) => points !== null));
  const read = useMemo(() => readCapture(view, typed, evaluator), [view, typed, evaluator]);
  const live = useMemo(() => (read.isChanged ? liveFindings(view, read) : null), [view, read]);
  const over = isOver(view);

  return (
    <div className="roomy">
      <ScreenHead title={words.title(view.caseNumber, view.title)} sentence={toldWords(view.told)}>
        <Link to="/chair" className="action">
          {words.back}
        </Link>
        <CaseAtChair caseId={view.caseId} mayTreat={may.treat(role)} />
        <Link to="/desk/cases/$caseId" params={{ caseId: view.caseId }} className="action">
          {words.theCase}
        </Link>
      </ScreenHead>
      <div className="stack">
        <div className="row">
          <span className="strong">{words.patient(view.patientName, birthDate(view.birthOn))}</span>
          <Tag tone={view.mayGoOn ? 'go' : 'plain'}>{words.state[view.state]}</Tag>
          {view.round > 1 ? <Tag>{words.round(view.round)}</Tag> : null}
        </div>
        <VisitBar
          view={view}
          today={practice.today}
          pending={act.isPending ? act.variables.action : null}
          error={act.error}
          onAct={(action) => {
            act.mutate({ action });
          }}
        />
        {view.alertId ? (
          <Notice tone="stop">
            {words.decide}{' '}
            <Link to="/chair/alerts/$alertId" params={{ alertId: view.alertId }} className="action">
              {words.decideGo}
            </Link>
          </Notice>
        ) : null}
        {over ? (
          <Notice tone={view.state === 'passed' ? 'go' : 'plain'}>
            {view.visit?.state === 'in-progress' ? words.visit.toFinish : words.completed}
          </Notice>
        ) : null}
        <StageFindings stageId={view.id} />
        {view.cautions.length > 0 ? (
          <section className="notice notice-caution" aria-labelledby="cautions">
            <h2 id="cautions">{words.cautions}</h2>
            <ul className="bullets">
              {view.cautions.map((caution) => (
                <li key={caution.code}>{caution.text}</li>
              ))}
            </ul>
          </section>
        ) : null}
        <SectionList sections={sectionsOf(view)} />
        <AfterTop>
          <div className="stage-grid">
            <div className="stack">
              <CaptureForm
                view={view}
                draft={draft}
                read={read}
                live={live}
                pending={capture.isPending}
                error={capture.error}
                onSave={(body, onSaved) => {
                  capture.mutate({ body, onSaved });
                }}
              />
              {judgesJawRelation(view) ? (
                <>
                  <VerticalPanel
                    view={view}
                    judged={read}
                    pending={screw.isPending}
                    error={screw.error}
                    onScrew={(body, onSaved) => {
                      screw.mutate({ body, onSaved });
                    }}
                  />
                  <TeethPanel view={view} judged={read} today={practice.today} />
                </>
              ) : null}
              <PhotographPanel stageId={view.id} zone={view.zone} today={practice.today} />
            </div>
            <div className="stack">
              <Verdicts shown={live ?? savedFindings(view)} checking={view.checking} />
              <VerdictHistory stageId={view.id} zone={view.zone} today={practice.today} />
              <Gates stageId={view.id} gates={view.gates} override={override} />
              {view.prescription && isBegun(view) ? (
                <PrescriptionForm
                  stageId={view.id}
                  zone={view.zone}
                  today={practice.today}
                  inForce={view.prescription}
                  prescribe={prescribe}
                />
              ) : null}
              {view.prescription?.signedAt != null && practice.orderedFrom.length > 0 && may.orderWork(role) ? (
                <SendOrder view={view} practice={practice} />
              ) : null}
              {over ? null : mayComplete(view) ? (
                <CompleteForm
                  hasAlert={view.alertId !== null}
                  pending={complete.isPending}
                  error={complete.error}
                  onComplete={(body) => {
                    complete.mutate(body);
                  }}
                />
              ) : (
                <p className="soft">{words.startFirst}</p>
              )}
              {isClosed(view) ? null : (
                <RaiseAlert
                  view={view}
                  raise={raise}
                  onRaised={(alert) => void navigate({ to: '/chair/alerts/$alertId', params: { alertId: alert.id } })}
                />
              )}
            </div>
          </div>
        </AfterTop>
      </div>
    </div>
  );
}

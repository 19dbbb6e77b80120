import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { Tag } from '../look/marks.js';
import { Notice, Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead } from '../look/screen.js';
import { practiceZone } from '../time/practice-zone.js';
import { birthDate } from '../time/wording.js';
import { stageWords as words } from '../words/chair.js';
import { CaptureForm } from './capture-form.js';
import { CompleteForm, PrescriptionForm } from './finish.js';
import { Gates } from './gates.js';
import { RaiseAlert } from './raise-alert.js';
import './stage.css';
import { useStage } from './use-stage.js';
import { Verdicts } from './verdicts.js';

/** One visit's work at the chair: cautions, checklist, measurements with live verdicts, gates, hand-over. */
export function StagePage() {
  const { stageId } = useParams({ from: '/inside/chair/stages/$stageId' });
  const navigate = useNavigate();
  const { practice, stage, ofCase, capture, override, complete, prescribe, raise } = useStage(stageId);
  const view = stage.data;
  if (!view || ofCase.isPending) {
    return stage.error ? (
      <Refusal error={stage.error} onRetry={() => void stage.refetch()} />
    ) : (
      <FirstWait what={words.loading} />
    );
  }
  const over = view.state === 'passed' || view.state === 'repeated' || view.state === 'dropped';
  const reloadOnStale = {
    onError: (error: Error) => {
      if (hasStatus(error, 412)) void stage.refetch();
    },
  };

  return (
    <div className="roomy">
      <ScreenHead title={words.title(view.caseNumber, view.title)} sentence={view.sentence}>
        <Link to="/chair">{words.back}</Link>
        <Link to="/desk/cases/$caseId" params={{ caseId: view.caseId }}>
          {words.theCase}
        </Link>
      </ScreenHead>
      <div className="stack">
        <div className="row">
          <span className="strong">{words.patient(view.patientName, birthDate(view.birthOn))}</span>
          <Tag tone={view.mayGoOn ? 'go' : 'plain'}>{words.state[view.state]}</Tag>
          {view.round > 1 ? <Tag>{words.round(view.round)}</Tag> : null}
        </div>
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
        {over ? <Notice tone="go">{words.completed}</Notice> : null}
        <div className="stage-grid">
          <CaptureForm
            view={view}
            pending={capture.isPending}
            error={capture.error}
            onSave={(body, done) => {
              capture.mutate(body, { onSuccess: done });
            }}
            onReload={async () => {
              await stage.refetch();
              capture.reset();
            }}
          />
          <div className="stack">
            <Verdicts view={view} />
            <Gates
              gates={view.gates}
              pending={override.isPending}
              error={override.error}
              onOverride={(body, done) => {
                override.mutate(body, { onSuccess: done, ...reloadOnStale });
              }}
            />
            <PrescriptionForm
              zone={ofCase.data?.zone ?? practiceZone(practice)}
              today={practice.today}
              pending={prescribe.isPending}
              error={prescribe.error}
              signed={prescribe.isSuccess}
              onSign={(body) => {
                prescribe.mutate(body, reloadOnStale);
              }}
            />
            {over ? null : (
              <CompleteForm
                pending={complete.isPending}
                error={complete.error}
                onComplete={(body) => {
                  complete.mutate(body, reloadOnStale);
                }}
              />
            )}
            <RaiseAlert
              view={view}
              pending={raise.isPending}
              error={raise.error}
              onRaise={(body) => {
                raise.mutate(body, {
                  onSuccess: (alert) => void navigate({ to: '/chair/alerts/$alertId', params: { alertId: alert.id } }),
                });
              }}
            />
          </div>
        </div>
      </div>
    </div>
  );
}

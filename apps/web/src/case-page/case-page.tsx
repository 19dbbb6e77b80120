import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { LineFigure } from '../case-line/line-figure.js';
import { lineOfCase } from '../case-line/plan-view.js';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { FreedNotice } from '../freed-time/freed-notice.js';
import { ChangedMeanwhile } from '../live/changed-meanwhile.js';
import { AfterTop } from '../look/after-top.js';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead, Waiting } from '../look/screen.js';
import { HoldBar } from '../offers/hold-bar.js';
import { birthDate } from '../time/wording.js';
import { viewerZone } from '../time/zone.js';
import { wishSentence } from '../wishes/wishes-view.js';
import { caseWords as words } from '../words/case.js';
import { toldWords } from '../words/told.js';
import { CaseAlerts, CaseHistory, CaseReminders } from './case-aside.js';
import { CaseAtChair } from './case-at-chair.js';
import './case-page.css';
import { caseRows, deliverySentence, historyRows, latestByOthers, reminderRows } from './case-page-view.js';
import { CaseTable } from './case-table.js';
import { ConsentForm } from './consent-form.js';
import { DecideTreatment } from './decide-treatment.js';
import { LinkedCases } from './linked-cases.js';
import { StateChange } from './state-change.js';
import { useCase } from './use-case.js';

/** One case as one line, with everything that can be done to it. */
export function CasePage() {
  const { caseId } = useParams({ from: '/inside/desk/cases/$caseId' });
  const freed = useSearch({ from: '/inside/desk/cases/$caseId' });
  const navigate = useNavigate();
  const { role, name } = useSession();
  const { practice, view, reminders, consent, state, confirm, release } = useCase(caseId, may.keepDesk(role));
  if (!view.data) {
    return <NotYet asked={view} what={words.loading} />;
  }
  const known = view.data;
  const clock = { today: practice.today, viewer: viewerZone() };
  const line = lineOfCase(known);
  const hasTimes = line.visits.length + line.bars.length > 0;

  return (
    <>
      <ScreenHead title={words.title(known.number, known.title)} sentence={toldWords(known.told)}>
        {known.stages.some(({ startsAt }) => startsAt !== null) && may.openCases(role) ? (
          <Link to="/desk/cases/$caseId/itinerary" params={{ caseId }}>
            {words.itinerary}
          </Link>
        ) : null}
        {known.plannable && (may.openCases(role) || role === 'manager') ? (
          <Link to="/desk/cases/$caseId/offers" params={{ caseId }} className="place place-here">
            {hasTimes ? words.replan : words.plan}
          </Link>
        ) : null}
      </ScreenHead>
      <Waiting busy={view.isPlaceholderData}>
        <div className="stack">
          <div className="row">
            <Tag tone={known.state === 'open' ? 'accent' : 'caution'}>{words.states[known.state]}</Tag>
            <Link to="/desk/patients/$patientId" params={{ patientId: known.patient.id }}>
              {words.patientLine(known.patient.name, birthDate(known.patient.birthOn))}
            </Link>
            {known.patient.phone ? <span>{known.patient.phone}</span> : null}
            <LinkedCases view={known} />
            <span className="soft">{wishSentence(known.wishes)}</span>
            <CaseAtChair caseId={caseId} mayTreat={may.treat(role)} />
            <span className="strong push">{deliverySentence(known, practice.today)}</span>
          </div>
          {may.keepDesk(role) ? <FreedNotice practice={practice} search={freed} /> : null}
          <ChangedMeanwhile key={known.id} kind="case" id={known.id} latest={latestByOthers(known, name)} />
          <Refusal error={view.error ?? confirm.error ?? release.error} />
          {known.hold && may.keepDesk(role) ? (
            <div className="sheet sheet-pad">
              <HoldBar
                expiresAt={known.hold.expiresAt}
                choices={[]}
                pending={confirm.isPending || release.isPending}
                onConfirm={(firm) => {
                  if (known.hold) confirm.mutate({ id: known.hold.id, planHash: known.hold.planHash, firm });
                }}
                onRelease={() => {
                  if (known.hold) release.mutate(known.hold.id);
                }}
                onAgain={() => void view.refetch()}
              />
            </div>
          ) : null}
          {known.state === 'enquiry' && may.openCases(role) ? (
            <DecideTreatment
              key={`decide ${known.id}`}
              view={known}
              practice={practice}
              pending={state.isPending}
              error={state.error}
              onDecide={(body, done) => {
                state.mutate(body, {
                  onSuccess: () => {
                    done();
                    void navigate({ to: '/desk/cases/$caseId/offers', params: { caseId } });
                  },
                });
              }}
            />
          ) : null}
          <AfterTop>
            <LineFigure line={line} label={words.line} nothing={words.nothingPlanned} />
            <div className="beside">
              <div className="stack">
                <section className="stack-tight">
                  <h2>{words.stages}</h2>
                  <CaseTable
                    caseId={caseId}
                    rows={caseRows(known, clock)}
                    mayChange={may.keepDesk(role)}
                    mayTreat={may.treat(role)}
                  />
                </section>
                <CaseHistory events={historyRows(known, practice.today)} />
              </div>
              <div className="stack">
                <CaseAlerts alerts={known.alerts} />
                {may.keepDesk(role) ? (
                  <CaseReminders rows={reminderRows(reminders.data?.items ?? [], known, practice.today)} />
                ) : null}
                <ConsentForm
                  key={`consent ${known.id}`}
                  view={known}
                  today={practice.today}
                  mayRecord={may.treat(role)}
                  pending={consent.isPending}
                  error={consent.error}
                  onSave={(body, onSaved) => {
                    consent.mutate(body, { onSuccess: onSaved });
                  }}
                />
                {may.openCases(role) ? (
                  <StateChange key={`${known.id} ${known.state}`} view={known} practice={practice} change={state} />
                ) : null}
              </div>
            </div>
          </AfterTop>
        </div>
      </Waiting>
    </>
  );
}

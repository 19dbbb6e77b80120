import { Button, Checkbox, NativeSelect } from '@mantine/core';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { openCaseWords as words } from '../words/case.js';
import { WishesFields } from '../wishes/wishes-fields.js';
import { draftOfWishes, emptyWishes } from '../wishes/wishes-view.js';
import {
  caseDraftKey,
  chooseClinics,
  cliniciansOf,
  emptyCase,
  parentChoices,
  readCase,
  readTypedCase,
} from './open-case-view.js';
import { PathFields } from './path-fields.js';
import { PatientChoice } from './patient-choice.js';
import { useOpenCase } from './use-open-case.js';
import { VisitPlaceFields } from './visit-place-fields.js';

/** One page from the telephone call to complete offers, or to times for the examination alone. */
export function OpenCasePage() {
  const search = useSearch({ from: '/inside/desk/cases/new' });
  const navigate = useNavigate();
  const [q, setQ] = useState('');
  const [patientId, setPatientId] = useState<string | null>(search.patient ?? null);
  const { practice, found, patient, open } = useOpenCase(q, patientId);
  const [typed, setTyped, forget, move] = useKeptDraft(
    caseDraftKey(search.as, patientId),
    () => emptyCase(practice, search.as === 'enquiry'),
    readTypedCase,
  );
  const [attempt, setAttempt] = useState(0);
  const draft = { ...typed, patientId };
  const reading = readCase(practice, draft);
  const errors = { ...fieldErrors(open.error), ...(attempt > 0 && 'errors' in reading ? reading.errors : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);
  const before = parentChoices(patient.data?.cases ?? []);
  const ownWishes = patient.data ? draftOfWishes(patient.data.wishes) : emptyWishes;

  function choose(chosen: string | null): void {
    // What was typed while nobody was chosen was typed for whoever is chosen now.
    if (patientId === null && chosen !== null) move(caseDraftKey(search.as, chosen));
    setPatientId(chosen);
    setAttempt(0);
    open.reset();
  }
  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    open.mutate(reading.body, {
      onSuccess: (view) => {
        forget();
        void navigate({ to: '/desk/cases/$caseId/offers', params: { caseId: view.id } });
      },
    });
  }

  return (
    <>
      <ScreenHead
        title={draft.enquiry ? words.enquiryTitle : words.title}
        sentence={draft.enquiry ? words.enquiryHead : words.sentence}
      />
      <form ref={form} onSubmit={submit} noValidate className="stack column">
        <fieldset className="sheet sheet-pad stack-tight">
          <h2>{words.patient}</h2>
          <PatientChoice
            q={q}
            found={found.data}
            chosen={patientId ? (patient.data ?? null) : null}
            error={errors['patientId']}
            then={search.as === 'enquiry' ? 'enquiry' : 'case'}
            onType={setQ}
            onChoose={choose}
          />
          <Refusal error={found.error ?? patient.error} />
        </fieldset>
        <fieldset className="sheet sheet-pad stack-tight">
          <h2>{words.arches}</h2>
          {draft.enquiry ? (
            <p>{words.enquirySentence}</p>
          ) : (
            <PathFields
              practice={practice}
              paths={draft.paths}
              errors={errors}
              onChange={(paths) => {
                setTyped({ ...typed, paths });
              }}
            />
          )}
          {before.length > 0 ? (
            <NativeSelect
              label={words.parent}
              description={words.parentHint}
              value={typed.parentCaseId}
              error={errors['parentCaseId']}
              data={[{ value: '', label: words.noParent }, ...before]}
              onChange={(event) => {
                setTyped({ ...typed, parentCaseId: event.currentTarget.value });
              }}
            />
          ) : null}
          <Checkbox
            label={words.enquiry}
            checked={draft.enquiry}
            onChange={(event) => {
              setTyped({ ...typed, enquiry: event.currentTarget.checked });
            }}
          />
        </fieldset>
        <fieldset className="sheet sheet-pad stack">
          <div>
            <h2>{words.clinics}</h2>
            <div className="row ticks">
              {practice.clinics.map((clinic) => (
                <Checkbox
                  key={clinic.id}
                  label={clinic.name}
                  checked={draft.clinicIds.includes(clinic.id)}
                  aria-invalid={errors['clinicIds'] ? true : undefined}
                  onChange={(event) => {
                    const rest = typed.clinicIds.filter((id) => id !== clinic.id);
                    const chosen = event.currentTarget.checked ? [...rest, clinic.id] : rest;
                    setTyped(chooseClinics(practice, typed, chosen));
                  }}
                />
              ))}
            </div>
            {errors['clinicIds'] ? <p className="field-error">{errors['clinicIds']}</p> : null}
          </div>
          <NativeSelect
            label={words.clinician}
            value={draft.clinicianId}
            error={errors['clinicianId']}
            data={[{ value: '', label: words.anyClinician }, ...cliniciansOf(practice, draft.clinicIds)]}
            onChange={(event) => {
              setTyped({ ...typed, clinicianId: event.currentTarget.value });
            }}
          />
          <VisitPlaceFields
            draft={draft}
            error={errors['visitPlace.travelMinutes']}
            onChange={(place) => {
              setTyped({ ...typed, ...place });
            }}
          />
        </fieldset>
        <fieldset className="sheet sheet-pad stack">
          <div>
            <h2>{words.wishes}</h2>
            <p className="small soft">{words.wishesFromPatient}</p>
          </div>
          <WishesFields
            wishes={draft.wishes ?? ownWishes}
            today={practice.today}
            errors={errors}
            onChange={(wishes) => {
              setTyped({ ...typed, wishes });
            }}
          />
        </fieldset>
        <Refusal error={open.error} />
        <div>
          <Button type="submit" loading={open.isPending}>
            {draft.enquiry ? words.openEnquiry : words.open}
          </Button>
        </div>
      </form>
    </>
  );
}

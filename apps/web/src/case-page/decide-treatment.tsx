import { Button, NativeSelect } from '@mantine/core';
import type { CaseView, ChangeCaseState, PracticeView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { archesOf, cliniciansOf } from '../open-case/open-case-view.js';
import { PathFields } from '../open-case/path-fields.js';
import { WishesFields } from '../wishes/wishes-fields.js';
import { wishesOfDraft } from '../wishes/wishes-view.js';
import { caseWords as words, openCaseWords } from '../words/case.js';
import { decidedSoFar, readTypedDecision } from './decide-view.js';

interface Props {
  view: CaseView;
  practice: PracticeView;
  pending: boolean;
  error: unknown;
  onDecide: (body: ChangeCaseState, done: () => void) => void;
}

/** After the examination: what is made, by whom and when it suits; then complete offers. */
export function DecideTreatment({ view, practice, pending, error, onDecide }: Props) {
  const [draft, change, forget] = useKeptDraft(`decide.${view.id}`, () => decidedSoFar(view), readTypedDecision);
  const [attempt, setAttempt] = useState(0);
  const arches = archesOf(draft.paths);
  const errors: Record<string, string> = {
    ...fieldErrors(error),
    ...(attempt > 0 && arches.length === 0 ? { arches: openCaseWords.needArch } : {}),
  };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  function decide(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (arches.length === 0 || pending) return;
    onDecide(
      {
        to: 'open',
        reason: words.decidedReason,
        reviewOn: null,
        arches,
        clinicianId: draft.clinicianId || null,
        wishes: wishesOfDraft(draft.wishes),
      },
      forget,
    );
  }

  return (
    <form ref={form} onSubmit={decide} noValidate className="sheet sheet-pad stack" aria-labelledby="decide-treatment">
      <div>
        <h2 id="decide-treatment">{words.decideTitle}</h2>
        <p className="soft">{words.decideSentence}</p>
      </div>
      <PathFields
        practice={practice}
        paths={draft.paths}
        errors={errors}
        onChange={(paths) => {
          change({ ...draft, paths });
        }}
      />
      <NativeSelect
        label={openCaseWords.clinician}
        value={draft.clinicianId}
        error={errors['clinicianId']}
        data={[{ value: '', label: openCaseWords.anyClinician }, ...cliniciansOf(practice, view.clinicIds)]}
        onChange={(event) => {
          change({ ...draft, clinicianId: event.currentTarget.value });
        }}
      />
      <WishesFields
        wishes={draft.wishes}
        today={practice.today}
        errors={errors}
        onChange={(wishes) => {
          change({ ...draft, wishes });
        }}
      />
      <Refusal error={error} />
      <div>
        <Button type="submit" loading={pending}>
          {openCaseWords.open}
        </Button>
      </div>
    </form>
  );
}

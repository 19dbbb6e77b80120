import { Button, NativeSelect } from '@mantine/core';
import type { CaseView, ChangeCaseState, PracticeView } from '@archwright/contracts';
import { useState } from 'react';
import { fieldErrors } from '../api/errors.js';
import { Refusal } from '../look/notice.js';
import { archesOf, cliniciansOf } from '../open-case/open-case-view.js';
import { PathFields } from '../open-case/path-fields.js';
import { WishesFields } from '../wishes/wishes-fields.js';
import { draftOfWishes, wishesOfDraft } from '../wishes/wishes-view.js';
import { caseWords as words, openCaseWords } from '../words/case.js';

interface Props {
  view: CaseView;
  practice: PracticeView;
  pending: boolean;
  error: unknown;
  onDecide: (body: ChangeCaseState) => void;
}

/** After the examination: what is made, by whom and when it suits; then complete offers. */
export function DecideTreatment({ view, practice, pending, error, onDecide }: Props) {
  const pathOf = (arch: 'upper' | 'lower'): string =>
    view.arches.find((each) => each.arch === arch)?.pathVersionId ?? '';
  const [paths, setPaths] = useState({ upper: pathOf('upper'), lower: pathOf('lower') });
  const [clinicianId, setClinician] = useState(view.clinicianId ?? '');
  const [wishes, setWishes] = useState(() => draftOfWishes(view.wishes));
  const [tried, setTried] = useState(false);
  const arches = archesOf(paths);
  const errors = fieldErrors(error);
  if (tried && arches.length === 0) errors['arches'] = openCaseWords.needArch;

  function decide(): void {
    setTried(true);
    if (arches.length === 0) return;
    onDecide({
      to: 'open',
      reason: words.decidedReason,
      reviewOn: null,
      arches,
      clinicianId: clinicianId || null,
      wishes: wishesOfDraft(wishes),
    });
  }

  return (
    <section className="sheet sheet-pad stack" aria-labelledby="decide-treatment">
      <div>
        <h2 id="decide-treatment">{words.decideTitle}</h2>
        <p className="soft">{words.decideSentence}</p>
      </div>
      <PathFields practice={practice} paths={paths} errors={errors} onChange={setPaths} />
      <NativeSelect
        label={openCaseWords.clinician}
        value={clinicianId}
        error={errors['clinicianId']}
        data={[{ value: '', label: openCaseWords.anyClinician }, ...cliniciansOf(practice, view.clinicIds)]}
        onChange={(event) => {
          setClinician(event.currentTarget.value);
        }}
      />
      <WishesFields wishes={wishes} today={practice.today} errors={errors} onChange={setWishes} />
      <Refusal error={error} />
      <div>
        <Button loading={pending} onClick={decide}>
          {openCaseWords.open}
        </Button>
      </div>
    </section>
  );
}

import { NativeSelect, TextInput } from '@mantine/core';
import { openCaseWords as words } from '../words/case.js';
import type { CaseDraft } from './open-case-view.js';

const PLACES = ['clinic', 'home', 'care-home'] as const;

interface VisitPlaceFieldsProps {
  draft: Pick<CaseDraft, 'place' | 'travelMinutes'>;
  error: string | undefined;
  onChange: (draft: Pick<CaseDraft, 'place' | 'travelMinutes'>) => void;
}

/** Where the visits are made; the way there only for visits at home. */
export function VisitPlaceFields({ draft, error, onChange }: VisitPlaceFieldsProps) {
  return (
    <div className="halves">
      <NativeSelect
        label={words.place}
        value={draft.place}
        data={PLACES.map((value) => ({ value, label: words.places[value] }))}
        onChange={(event) => {
          const { value } = event.currentTarget;
          onChange({ travelMinutes: draft.travelMinutes, place: PLACES.find((each) => each === value) ?? 'clinic' });
        }}
      />
      {draft.place === 'clinic' ? null : (
        <TextInput
          inputMode="numeric"
          label={words.travel}
          description={words.travelHint}
          value={draft.travelMinutes}
          error={error}
          onChange={(event) => {
            onChange({ place: draft.place, travelMinutes: event.currentTarget.value });
          }}
        />
      )}
    </div>
  );
}

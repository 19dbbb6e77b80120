import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { PracticeView } from '@archwright/contracts';
import { userWords as words } from '../words/users.js';
import type { UserDraft, UserErrors } from './user-draft.js';

interface Props {
  draft: UserDraft;
  practice: PracticeView;
  errors: UserErrors;
  onChange: (draft: UserDraft) => void;
}

/** Who somebody is, what they may do, and where. */
export function UserFields({ draft, practice, errors, onChange }: Props) {
  const clinicians = new Map(practice.clinics.flatMap((clinic) => clinic.clinicians.map(({ id, name }) => [id, name])));
  return (
    <>
      <TextInput
        label={words.fields.name}
        value={draft.name}
        error={errors.name}
        onChange={(event) => {
          onChange({ ...draft, name: event.currentTarget.value });
        }}
      />
      <TextInput
        type="email"
        label={words.fields.mail}
        value={draft.mail}
        error={errors.mail}
        onChange={(event) => {
          onChange({ ...draft, mail: event.currentTarget.value });
        }}
      />
      <NativeSelect
        label={words.fields.role}
        data={Object.entries(words.roles).map(([value, label]) => ({ value, label }))}
        value={draft.role}
        onChange={(event) => {
          onChange({ ...draft, role: event.currentTarget.value });
        }}
      />
      {draft.role === 'clinician' ? (
        <NativeSelect
          label={words.fields.practitionerId}
          data={[{ value: '', label: words.choose }, ...[...clinicians].map(([value, label]) => ({ value, label }))]}
          value={draft.practitionerId}
          error={errors.practitionerId}
          onChange={(event) => {
            onChange({ ...draft, practitionerId: event.currentTarget.value });
          }}
        />
      ) : null}
      <Places
        legend={words.fields.clinicIds}
        places={practice.clinics}
        chosen={draft.clinicIds}
        onChange={(clinicIds) => {
          onChange({ ...draft, clinicIds });
        }}
      />
      <Places
        legend={words.fields.laboratoryIds}
        places={practice.laboratories}
        chosen={draft.laboratoryIds}
        onChange={(laboratoryIds) => {
          onChange({ ...draft, laboratoryIds });
        }}
      />
    </>
  );
}

interface PlacesProps {
  legend: string;
  places: readonly { id: string; name: string }[];
  chosen: readonly string[];
  onChange: (chosen: string[]) => void;
}

function Places({ legend, places, chosen, onChange }: PlacesProps) {
  return (
    <fieldset className="stack-tight">
      <legend>{legend}</legend>
      <div className="row ticks">
        {places.map(({ id, name }) => (
          <Checkbox
            key={id}
            label={name}
            checked={chosen.includes(id)}
            onChange={(event) => {
              const rest = chosen.filter((each) => each !== id);
              onChange(event.currentTarget.checked ? [...rest, id] : rest);
            }}
          />
        ))}
      </div>
    </fieldset>
  );
}

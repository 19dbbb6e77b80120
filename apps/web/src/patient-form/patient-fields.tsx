import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { DateField } from '../look/date-field.js';
import { patientWords as words } from '../words/desk.js';
import { WishesFields } from '../wishes/wishes-fields.js';
import type { PatientDraft } from './patient-form-view.js';

interface Props {
  draft: PatientDraft;
  zones: string[];
  today: string;
  errors: Record<string, string>;
  onChange: (draft: PatientDraft) => void;
}

type TextKey = { [Key in keyof PatientDraft]: PatientDraft[Key] extends string ? Key : never }[keyof PatientDraft];
type TickKey = { [Key in keyof PatientDraft]: PatientDraft[Key] extends boolean ? Key : never }[keyof PatientDraft];

/** All fields of a patient in four parts. */
export function PatientFields({ draft, zones, today, errors, onChange }: Props) {
  const text = (key: TextKey) => ({
    value: draft[key],
    error: errors[key],
    onChange: (event: { currentTarget: { value: string } }) => {
      onChange({ ...draft, [key]: event.currentTarget.value });
    },
  });
  const tick = (key: TickKey) => ({
    checked: draft[key],
    onChange: (event: { currentTarget: { checked: boolean } }) => {
      onChange({ ...draft, [key]: event.currentTarget.checked });
    },
  });
  return (
    <>
      <fieldset className="sheet sheet-pad stack">
        <h2>{words.partWho}</h2>
        <div className="thirds">
          <TextInput label={words.given} required autoComplete="off" {...text('givenName')} />
          <TextInput label={words.family} required autoComplete="off" {...text('familyName')} />
          <DateField
            isBirth
            label={words.birth}
            required
            max={today}
            value={draft.birthOn}
            error={errors['birthOn']}
            onChange={(birthOn) => {
              onChange({ ...draft, birthOn });
            }}
          />
        </div>
        <NativeSelect
          label={words.sex}
          description={words.sexHint}
          inputWrapperOrder={ORDER}
          data={Object.entries(words.sexes).map(([value, label]) => ({ value, label }))}
          {...text('sex')}
        />
      </fieldset>
      <fieldset className="sheet sheet-pad stack">
        <h2>{words.partReach}</h2>
        <div className="halves">
          <TextInput
            type="tel"
            label={words.phone}
            description={words.phoneHint}
            inputWrapperOrder={ORDER}
            {...text('phone')}
          />
          <TextInput type="email" label={words.mail} {...text('mail')} />
          <TextInput label={words.address} {...text('address')} />
          <TextInput
            label={words.access}
            description={words.accessHint}
            inputWrapperOrder={ORDER}
            {...text('accessNote')}
          />
          <NativeSelect label={words.zone} required data={zones} {...text('zone')} />
          <NativeSelect
            label={words.locale}
            data={Object.entries(words.locales).map(([value, label]) => ({ value, label }))}
            {...text('locale')}
          />
        </div>
        <div className="row ticks">
          <span>{words.consent}</span>
          <Checkbox label={words.consentMail} {...tick('remindByMail')} />
          <Checkbox label={words.consentPhone} {...tick('remindByPhone')} />
        </div>
      </fieldset>
      <fieldset className="sheet sheet-pad stack">
        <h2>{words.partCare}</h2>
        <div className="halves">
          <TextInput label={words.companion} {...text('companionName')} />
          <TextInput
            label={words.interpreter}
            description={words.interpreterHint}
            inputWrapperOrder={ORDER}
            {...text('interpreter')}
          />
          <TextInput
            inputMode="numeric"
            label={words.minutesPerDay}
            description={words.minutesPerDayHint}
            inputWrapperOrder={ORDER}
            {...text('chairMinutesPerDay')}
          />
          <TextInput inputMode="numeric" label={words.travel} {...text('travelMinutes')} />
        </div>
        <div className="row ticks">
          <Checkbox label={words.companionPermitted} {...tick('companionPermitted')} />
          <Checkbox label={words.wheelchair} {...tick('wheelchairRoom')} />
        </div>
      </fieldset>
      <fieldset className="sheet sheet-pad stack">
        <h2>{words.partWishes}</h2>
        <WishesFields
          wishes={draft.wishes}
          today={today}
          errors={errors}
          onChange={(wishes) => {
            onChange({ ...draft, wishes });
          }}
        />
      </fieldset>
    </>
  );
}

/** Hints stand below their field, so that fields in one row stay on one line. */
const ORDER = ['label', 'input', 'description', 'error'] as ('label' | 'input' | 'description' | 'error')[];

import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { SetupView } from '@archwright/contracts';
import { NumberBox } from '../look/number-box.js';
import { WeekdaysField } from '../look/weekdays-field.js';
import { setupWords as words } from '../words/setup.js';
import { BatchField, CodesField } from './choice-fields.js';
import { HoursField } from './hours-field.js';
import type { RecordDraft } from './record-draft.js';
import { labelOf, type RecordField as Field } from './record-fields.js';
import { closableParts, closedKindOf, optionsOf, zoneOfDraft, type Option } from './setup-view.js';
import { WorkplacesField, type Workplace } from './workplaces-field.js';

interface Props {
  field: Field;
  setup: SetupView;
  draft: RecordDraft;
  isNew: boolean;
  errors: Readonly<Record<string, string>>;
  onChange: (value: unknown) => void;
}

/** One field of a record, by the shape of its value. */
export function RecordField(props: Props) {
  const { field, setup, draft, errors, onChange } = props;
  const { key, shape } = field;
  switch (shape) {
    case 'tick':
      return (
        <Checkbox
          label={labelOf(key)}
          checked={draft[key] === true}
          onChange={(event) => {
            onChange(event.currentTarget.checked);
          }}
        />
      );
    case 'zone':
    case 'clinic':
    case 'laboratory':
    case 'role':
    case 'measures':
    case 'closed-part':
      return <Choice {...props} />;
    case 'skills':
      return (
        <CodesField
          label={labelOf(key)}
          known={setup.asked.skills}
          codes={draft[key] as string[]}
          onChange={onChange}
        />
      );
    case 'weekdays':
      return (
        <WeekdaysField legend={labelOf(key)} days={draft[key] as number[]} error={errors[key]} onChange={onChange} />
      );
    case 'batch':
      return <BatchField batch={draft[key]} error={errors['batch.size']} onChange={onChange} />;
    case 'hours':
    case 'departures':
      return (
        <HoursField
          label={labelOf(key)}
          {...(draft.kind === 'work-centre' ? { hint: words.hoursOfCentre } : {})}
          times={draft[key] as Parameters<typeof HoursField>[0]['times']}
          isDeparture={shape === 'departures'}
          zone={zoneOfDraft(setup, draft)}
          today={setup.today}
          errors={errors}
          path={key}
          onChange={onChange}
        />
      );
    case 'workplaces':
      return (
        <WorkplacesField setup={setup} workplaces={draft[key] as Workplace[]} errors={errors} onChange={onChange} />
      );
    case 'number':
      return (
        <NumberBox
          label={labelOf(key)}
          value={typeof draft[key] === 'number' ? draft[key] : null}
          error={errors[key]}
          onChange={(typed) => {
            onChange(typed ?? '');
          }}
        />
      );
    default:
      return <Typed {...props} />;
  }
}

const INPUT_TYPES: Partial<Record<Field['shape'], string>> = {
  time: 'time',
  'optional-time': 'time',
  date: 'date',
};

function Typed({ field: { key, shape, isFixed }, setup, draft, isNew, errors, onChange }: Props) {
  const known = shape === 'kit-code' ? setup.asked.kits : shape === 'centre-code' ? setup.asked.workCentres : [];
  const isOptional = shape.startsWith('optional');
  const value = draft[key];
  return (
    <>
      <TextInput
        label={labelOf(key)}
        type={INPUT_TYPES[shape] ?? 'text'}
        value={typeof value === 'string' ? value : ''}
        error={errors[key]}
        readOnly={isFixed === true && !isNew}
        {...(known.length > 0 ? { list: `known-${key}` } : {})}
        onChange={(event) => {
          const typed = event.currentTarget.value;
          onChange(isOptional && typed === '' ? null : typed);
        }}
      />
      {known.length > 0 ? (
        <datalist id={`known-${key}`}>
          {known.map((code) => (
            <option key={code} value={code} />
          ))}
        </datalist>
      ) : null}
    </>
  );
}

function Choice({ field: { key, shape, isFixed }, setup, draft, isNew, errors, onChange }: Props) {
  const options = choicesOf(shape, setup);
  const value = draft[key];
  const chosen = shape === 'closed-part' ? (value as { id: string }).id : String(value);
  return (
    <NativeSelect
      label={labelOf(key)}
      data={[{ value: '', label: words.choose }, ...options]}
      value={chosen}
      error={errors[key] ?? errors[`${key}.id`]}
      disabled={isFixed === true && !isNew}
      onChange={(event) => {
        const id = event.currentTarget.value;
        onChange(shape === 'closed-part' ? { kind: closedKindOf(setup, id), id } : id);
      }}
    />
  );
}

function choicesOf(shape: Field['shape'], setup: SetupView): Option[] {
  switch (shape) {
    case 'clinic':
      return optionsOf(setup, ['clinic']);
    case 'laboratory':
      return optionsOf(setup, ['laboratory']);
    case 'role':
      return Object.entries(words.roles).map(([value, label]) => ({ value, label }));
    case 'measures':
      return Object.entries(words.measures).map(([value, label]) => ({ value, label }));
    case 'closed-part':
      return closableParts(setup);
    default:
      return Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone }));
  }
}

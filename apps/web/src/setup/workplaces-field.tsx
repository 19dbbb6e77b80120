import { Checkbox } from '@mantine/core';
import type { RecurringHours, SetupView } from '@archwright/contracts';
import { setupWords as words } from '../words/setup.js';
import { HoursField } from './hours-field.js';
import { firstHours } from './record-draft.js';
import { optionsOf } from './setup-view.js';

export interface Workplace {
  readonly clinicId: string;
  readonly hours: readonly RecurringHours[];
}

interface Props {
  setup: SetupView;
  workplaces: readonly Workplace[];
  errors: Readonly<Record<string, string>>;
  onChange: (workplaces: Workplace[]) => void;
}

/** The clinics where a person works, each with the hours there by its own clock. */
export function WorkplacesField({ setup, workplaces, errors, onChange }: Props) {
  return (
    <fieldset className="stack-tight">
      <legend>{words.fields.workplaces}</legend>
      <div className="row ticks">
        {optionsOf(setup, ['clinic']).map(({ value, label }) => (
          <Checkbox
            key={value}
            label={label}
            checked={workplaces.some(({ clinicId }) => clinicId === value)}
            onChange={(event) => {
              const rest = workplaces.filter(({ clinicId }) => clinicId !== value);
              const added = { clinicId: value, hours: [firstHours(setup.today)] };
              onChange(event.currentTarget.checked ? [...workplaces, added] : rest);
            }}
          />
        ))}
      </div>
      {workplaces.map(({ clinicId, hours }, index) => (
        <HoursField
          key={clinicId}
          label={clinicOf(setup, clinicId).name}
          times={hours}
          isDeparture={false}
          zone={clinicOf(setup, clinicId).zone}
          today={setup.today}
          errors={errors}
          path={`workplaces.${String(index)}.hours`}
          onChange={(next) => {
            const kept = next.map((time) => ({ minutes: 0, ...time }));
            onChange(workplaces.map((known, at) => (at === index ? { clinicId, hours: kept } : known)));
          }}
        />
      ))}
    </fieldset>
  );
}

function clinicOf({ entries }: SetupView, clinicId: string): { name: string; zone: string } {
  const record = entries.find(({ id }) => id === clinicId)?.record;
  return record?.kind === 'clinic' ? record : { name: '', zone: 'UTC' };
}

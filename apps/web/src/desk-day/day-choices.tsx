import { Button, NativeSelect } from '@mantine/core';
import type { PracticeView } from '@archwright/contracts';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { DayPicker } from '../look/day-picker.js';
import { deskWords } from '../words/desk.js';
import { GROUPINGS, groupingOf } from './day-groups.js';

/** Which day, of which clinic, and by what it is looked at; all of it stands in the address. */
export function DayChoices({ practice, day }: { practice: PracticeView; day: string }) {
  const search = useSearch({ from: '/inside/desk' });
  const navigate = useNavigate();
  const go = (change: Partial<typeof search>): void => {
    void navigate({ to: '/desk', search: { ...search, ...change } });
  };
  return (
    <>
      <NativeSelect
        aria-label={deskWords.grouping}
        value={groupingOf(search.by)}
        data={GROUPINGS.map((value) => ({ value, label: deskWords.groupings[value] }))}
        onChange={(event) => {
          go({ by: event.currentTarget.value });
        }}
      />
      <NativeSelect
        aria-label={deskWords.clinic}
        value={search.clinic ?? ''}
        data={[
          { value: '', label: deskWords.allClinics },
          ...practice.clinics.map((clinic) => ({ value: clinic.id, label: clinic.name })),
        ]}
        onChange={(event) => {
          go({ clinic: event.currentTarget.value || undefined });
        }}
      />
      <DayPicker
        day={day}
        today={practice.today}
        onPick={(on) => {
          go({ on });
        }}
      />
      <Button
        variant="default"
        onClick={() => {
          window.print();
        }}
      >
        {deskWords.print}
      </Button>
    </>
  );
}

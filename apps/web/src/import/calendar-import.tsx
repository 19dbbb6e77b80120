import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { FileField } from '../look/file-field.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { optionsOf } from '../setup/setup-view.js';
import { practiceZone } from '../time/practice-zone.js';
import { importWords as words } from '../words/import.js';
import { calendarOutcome, isFit } from './import-view.js';
import { Outcome } from './outcome.js';
import type { useImports } from './use-imports.js';

type Props = Pick<ReturnType<typeof useImports>, 'practice' | 'setup' | 'calendar'>;

/** Busy times of one chair, person or set of instruments: tried first, then taken in as they were tried. */
export function CalendarImport({ practice, setup, calendar }: Props) {
  const [file, setFile] = useState<File | null>(null);
  const [resourceId, setResourceId] = useState('');
  const [named, setNamed] = useState<string | null>(null);
  const [attempt, setAttempt] = useState(0);
  // A calendar is called as its file until it is given another name.
  const source = named ?? file?.name ?? '';
  const wrong = {
    file: isFit(file) ? undefined : words.needFile,
    resource: resourceId === '' ? words.needResource : undefined,
    source: source.trim() === '' ? words.needSource : undefined,
  };
  const isWrong = Object.values(wrong).some((problem) => problem !== undefined);
  const form = useFirstProblem(attempt, isWrong);
  const errors: Partial<typeof wrong> = attempt > 0 ? wrong : {};
  const tried = calendar.data;

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (file === null || isWrong) return;
    calendar.mutate(async () => {
      const body = { source: source.trim(), calendar: await file.text(), isTrial: true };
      return { resourceId, body };
    });
  }

  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="calendar">
      <h2 id="calendar">{words.calendar}</h2>
      <p className="soft">{words.calendarHint}</p>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <FileField
          label={words.file(words.calendar)}
          accept=".ics,text/calendar"
          error={errors.file}
          onPick={(picked) => {
            setFile(picked);
            calendar.reset();
          }}
        />
        <NativeSelect
          label={words.resource}
          data={[
            { value: '', label: words.choose },
            ...(setup.data ? optionsOf(setup.data, ['chair', 'person', 'kit']) : []),
          ]}
          value={resourceId}
          error={errors.resource}
          onChange={(event) => {
            setResourceId(event.currentTarget.value);
            calendar.reset();
          }}
        />
        <TextInput
          label={words.source}
          maxLength={500}
          value={source}
          error={errors.source}
          onChange={(event) => {
            setNamed(event.currentTarget.value);
            calendar.reset();
          }}
        />
        <div>
          <Button type="submit" variant="default" loading={calendar.isPending}>
            {words.try}
          </Button>
        </div>
      </form>
      <Refusal error={calendar.error ?? setup.error} />
      {tried ? (
        <>
          <Outcome
            view={calendarOutcome(tried.answer, tried.sent.body.isTrial, practiceZone(practice), practice.today)}
          />
          {tried.sent.body.isTrial ? (
            <div>
              <Button
                loading={calendar.isPending}
                onClick={() => {
                  const body = { ...tried.sent.body, isTrial: false };
                  calendar.mutate(() => Promise.resolve({ ...tried.sent, body }));
                }}
              >
                {words.take}
              </Button>
            </div>
          ) : null}
        </>
      ) : null}
    </section>
  );
}

import { Button, Checkbox, NativeSelect } from '@mantine/core';
import type { ImportPatientTable } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { FileField } from '../look/file-field.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { practiceZone } from '../time/practice-zone.js';
import { importWords as words } from '../words/import.js';
import { bytesAsBase64 } from './file-content.js';
import { isFit, patientOutcome } from './import-view.js';
import { Outcome } from './outcome.js';
import type { useImports } from './use-imports.js';

type Options = Omit<ImportPatientTable, 'contentBase64' | 'isTrial' | 'mapping'>;

/** A table of patients: tried first, then taken in as it was tried. */
export function PatientImport({ practice, patients }: Pick<ReturnType<typeof useImports>, 'practice' | 'patients'>) {
  const [file, setFile] = useState<File | null>(null);
  const [options, setOptions] = useState<Options>({
    zone: practiceZone(practice),
    dateOrder: 'ymd',
    encoding: 'utf-8',
    isUpdating: false,
    isStrict: false,
  });
  const [attempt, setAttempt] = useState(0);
  const lacksFile = !isFit(file);
  const form = useFirstProblem(attempt, lacksFile);
  const tried = patients.data;

  function edit(next: Partial<Options>): void {
    setOptions({ ...options, ...next });
    patients.reset();
  }
  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (file === null || lacksFile) return;
    patients.mutate(async () => ({
      ...options,
      contentBase64: await bytesAsBase64(file),
      mapping: {},
      isTrial: true,
    }));
  }

  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="patients">
      <h2 id="patients">{words.patients}</h2>
      <p className="soft">{words.patientsHint}</p>
      <form ref={form} onSubmit={submit} noValidate className="stack-tight">
        <FileField
          label={words.file(words.patients)}
          accept=".csv,.tsv,.txt,text/csv"
          error={attempt > 0 && lacksFile ? words.needFile : undefined}
          onPick={(picked) => {
            setFile(picked);
            patients.reset();
          }}
        />
        <div className="row row-end">
          <NativeSelect
            label={words.zone}
            data={Intl.supportedValuesOf('timeZone')}
            value={options.zone}
            onChange={(event) => {
              edit({ zone: event.currentTarget.value });
            }}
          />
          <NativeSelect
            label={words.dateOrder}
            data={optionsOf(words.dateOrders)}
            value={options.dateOrder}
            onChange={(event) => {
              edit({ dateOrder: event.currentTarget.value as Options['dateOrder'] });
            }}
          />
          <NativeSelect
            label={words.encoding}
            data={optionsOf(words.encodings)}
            value={options.encoding}
            onChange={(event) => {
              edit({ encoding: event.currentTarget.value as Options['encoding'] });
            }}
          />
        </div>
        {(['isUpdating', 'isStrict'] as const).map((option) => (
          <Checkbox
            key={option}
            label={words[option]}
            checked={options[option]}
            onChange={(event) => {
              edit({ [option]: event.currentTarget.checked });
            }}
          />
        ))}
        <div>
          <Button type="submit" variant="default" loading={patients.isPending}>
            {words.try}
          </Button>
        </div>
      </form>
      <Refusal error={patients.error} />
      {tried ? (
        <>
          <Outcome view={patientOutcome(tried.answer, tried.sent.isTrial)} />
          <div className="row">
            {tried.sent.isTrial ? (
              <Button
                loading={patients.isPending}
                onClick={() => {
                  patients.mutate(() => Promise.resolve({ ...tried.sent, isTrial: false }));
                }}
              >
                {words.take}
              </Button>
            ) : null}
            {tried.answer.rejectsCsv === null ? null : (
              <a
                href={`data:text/csv;charset=utf-8,${encodeURIComponent(tried.answer.rejectsCsv)}`}
                download={words.rejectsName}
              >
                {words.download}
              </a>
            )}
          </div>
        </>
      ) : null}
    </section>
  );
}

const optionsOf = (choices: Record<string, string>) =>
  Object.entries(choices).map(([value, label]) => ({ value, label }));

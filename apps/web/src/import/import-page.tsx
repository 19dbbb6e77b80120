import { ScreenHead } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { importWords as words } from '../words/import.js';
import { CalendarImport } from './calendar-import.js';
import { PatientImport } from './patient-import.js';
import { useImports } from './use-imports.js';

/** Files from elsewhere, each tried before it is taken in. */
export function ImportPage() {
  const { practice, setup, patients, calendar } = useImports();
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack">
        <PracticePlaces />
        <PatientImport practice={practice} patients={patients} />
        <CalendarImport practice={practice} setup={setup} calendar={calendar} />
      </div>
    </>
  );
}

import type { PracticeView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { practiceWords as words } from '../words/practice.js';
import { FactsTable } from './facts-table.js';
import { clinicRows, laboratoryRows, pathRows } from './practice-view.js';

/** Clinics, laboratories and treatment paths, each with the way to its day or its load. */
export function PracticeFacts({ practice }: { practice: PracticeView }) {
  const { clinicColumns, laboratoryColumns, pathColumns } = words;
  return (
    <>
      <FactsTable
        title={words.clinicsTitle}
        columns={Object.values(clinicColumns)}
        rows={clinicRows(practice).map(({ id, name, zone, chairs, clinicians }) => ({
          id,
          head: (
            <Link to="/desk" search={{ clinic: id }} aria-label={words.seeDay(name)}>
              {name}
            </Link>
          ),
          cells: [
            zone,
            chairs,
            <ul key="clinicians">
              {clinicians.map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ul>,
          ],
        }))}
      />
      <FactsTable
        title={words.laboratoriesTitle}
        columns={Object.values(laboratoryColumns)}
        rows={laboratoryRows(practice).map(({ id, name, zone, workCentres }) => ({
          id,
          head: (
            <Link to="/bench" search={{ lab: id }} aria-label={words.seeLoad(name)}>
              {name}
            </Link>
          ),
          cells: [zone, workCentres],
        }))}
      />
      <FactsTable
        title={words.pathsTitle}
        columns={Object.values(pathColumns)}
        rows={pathRows(practice).map(({ id, title, arches, visits, version }) => ({
          id,
          head: title,
          cells: [arches, visits, version],
        }))}
      />
    </>
  );
}

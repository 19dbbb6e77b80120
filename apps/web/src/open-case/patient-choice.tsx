import { Button, TextInput } from '@mantine/core';
import type { PatientPage, PatientView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { birthDate } from '../time/wording.js';
import { openCaseWords as words } from '../words/case.js';

interface Props {
  q: string;
  found: PatientPage | undefined;
  chosen: PatientView | null;
  error: string | undefined;
  /** What a patient who has to be added first is wanted for. */
  then: 'case' | 'enquiry';
  onType: (q: string) => void;
  onChoose: (patientId: string | null) => void;
}

/** Finds the patient by name, or shows the one that was chosen. */
export function PatientChoice({ q, found, chosen, error, then, onType, onChoose }: Props) {
  if (chosen) {
    return (
      <p className="row">
        <span className="strong">
          {words.choosePatient(`${chosen.givenName} ${chosen.familyName}`, birthDate(chosen.birthOn))}
        </span>
        <Button
          variant="subtle"
          size="compact-sm"
          onClick={() => {
            onChoose(null);
          }}
        >
          {words.otherPatient}
        </Button>
      </p>
    );
  }
  const asked = q.trim().length >= 2;
  return (
    <div className="stack-tight">
      <TextInput
        label={words.findPatient}
        value={q}
        error={error}
        autoComplete="off"
        onChange={(event) => {
          onType(event.currentTarget.value);
        }}
      />
      <div aria-live="polite">
        {!asked ? <p className="small soft">{words.typeMore}</p> : null}
        {asked && found?.items.length === 0 ? (
          <p>
            {words.noPatient}{' '}
            <Link to="/desk/patients/new" search={{ name: q.trim(), then }}>
              {words.addPatient}
            </Link>
          </p>
        ) : null}
        <ul className="stack-tight">
          {asked
            ? (found?.items ?? []).map((patient) => (
                <li key={patient.id}>
                  <Button
                    variant="default"
                    onClick={() => {
                      onChoose(patient.id);
                    }}
                  >
                    {words.choosePatient(`${patient.givenName} ${patient.familyName}`, birthDate(patient.birthOn))}
                  </Button>
                </li>
              ))
            : null}
        </ul>
      </div>
    </div>
  );
}

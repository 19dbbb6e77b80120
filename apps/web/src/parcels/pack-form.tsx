import { Button, NativeSelect } from '@mantine/core';
import type { HandedOver, PackParcel } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { packWords as words, parcelWords } from '../words/parcels.js';
import { TwoNames } from './two-names.js';

interface Place {
  id: string;
  name: string;
}

interface Props {
  direction: PackParcel['direction'];
  clinics: readonly Place[];
  laboratories: readonly Place[];
  pending: boolean;
  error: unknown;
  isPacked: boolean;
  onPack: (body: PackParcel, done: () => void) => void;
}

const options = (places: readonly Place[]) => places.map(({ id, name }) => ({ value: id, label: name }));

/** A parcel from here: both ends, and every object by two names. */
export function PackForm({ direction, clinics, laboratories, pending, error, isPacked, onPack }: Props) {
  const [clinicId, setClinicId] = useState(clinics[0]?.id ?? '');
  const [laboratoryId, setLaboratoryId] = useState(laboratories[0]?.id ?? '');
  const [objects, setObjects] = useState<HandedOver[]>([]);
  const [tried, setTried] = useState(false);
  const refused = fieldErrors(error);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setTried(true);
    if (objects.length === 0) return;
    onPack({ direction, clinicId, laboratoryId, courierLegId: null, objects }, () => {
      setObjects([]);
      setTried(false);
    });
  }

  return (
    <form onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h2>{words.title}</h2>
      <p className="soft">{words.hint}</p>
      <div className="halves">
        <NativeSelect
          label={words.clinic}
          data={options(clinics)}
          value={clinicId}
          onChange={(event) => {
            setClinicId(event.currentTarget.value);
          }}
        />
        <NativeSelect
          label={words.laboratory}
          data={options(laboratories)}
          value={laboratoryId}
          onChange={(event) => {
            setLaboratoryId(event.currentTarget.value);
          }}
        />
      </div>
      <TwoNames
        onAdd={(named) => {
          setObjects([...objects, named]);
        }}
      />
      <ul className="stack-tight">
        {objects.map(({ caseNumber, code }, index) => (
          <li key={`${code} ${String(index)}`}>
            <div className="row">
              <span className="strong">{parcelWords.object(caseNumber, code)}</span>
              <Button
                size="compact-sm"
                variant="default"
                aria-label={words.remove(code)}
                onClick={() => {
                  setObjects(objects.filter((_, at) => at !== index));
                }}
              >
                {words.removeShort}
              </Button>
            </div>
            <p className="field-error">{refused[`objects.${String(index)}`]}</p>
          </li>
        ))}
      </ul>
      {tried && objects.length === 0 ? <p className="field-error">{words.empty}</p> : null}
      {isPacked && objects.length === 0 ? <Notice tone="go">{words.packed}</Notice> : null}
      <Refusal error={Object.keys(refused).length > 0 ? null : error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.go}
        </Button>
      </div>
    </form>
  );
}

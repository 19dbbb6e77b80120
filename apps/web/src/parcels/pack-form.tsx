import { Button, NativeSelect } from '@mantine/core';
import { packParcel, type HandedOver, type PackParcel } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
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

const typed = packParcel.pick({ clinicId: true, laboratoryId: true, objects: true });
type Packed = Pick<PackParcel, 'clinicId' | 'laboratoryId' | 'objects'>;

/** Labels that were read off before a reload; null where none were. */
const readPacked = (kept: unknown): Packed | null => typed.safeParse(kept).data ?? null;

const options = (places: readonly Place[]) => places.map(({ id, name }) => ({ value: id, label: name }));

/** A parcel from here: both ends, and every object by two names. */
export function PackForm({ direction, clinics, laboratories, pending, error, isPacked, onPack }: Props) {
  const [draft, change, forget] = useKeptDraft<Packed>(
    `pack.${direction}`,
    () => ({ clinicId: clinics[0]?.id ?? '', laboratoryId: laboratories[0]?.id ?? '', objects: [] }),
    readPacked,
  );
  const [attempt, setAttempt] = useState(0);
  const { clinicId, laboratoryId, objects } = draft;
  const refused = fieldErrors(error);
  const isEmpty = attempt > 0 && objects.length === 0;
  const form = useFirstProblem(attempt, isEmpty);
  const hold = (held: HandedOver[]): void => {
    change({ ...draft, objects: held });
  };

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (objects.length === 0 || pending) return;
    onPack({ direction, clinicId, laboratoryId, courierLegId: null, objects }, () => {
      hold([]);
      forget();
      setAttempt(0);
    });
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h2>{words.title}</h2>
      <p className="soft">{words.hint}</p>
      <div className="halves">
        <NativeSelect
          label={words.clinic}
          data={options(clinics)}
          value={clinicId}
          onChange={(event) => {
            change({ ...draft, clinicId: event.currentTarget.value });
          }}
        />
        <NativeSelect
          label={words.laboratory}
          data={options(laboratories)}
          value={laboratoryId}
          onChange={(event) => {
            change({ ...draft, laboratoryId: event.currentTarget.value });
          }}
        />
      </div>
      <TwoNames
        wanted={isEmpty ? words.empty : null}
        onAdd={(named) => {
          hold([...objects, named]);
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
                  hold(objects.filter((_, at) => at !== index));
                }}
              >
                {words.removeShort}
              </Button>
            </div>
            <p className="field-error" role="alert">
              {refused[`objects.${String(index)}`]}
            </p>
          </li>
        ))}
      </ul>
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

import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { useState } from 'react';
import { Refusal } from '../look/notice.js';
import { typedNumber } from '../stage/typed-number.js';
import { verticalWords as words } from '../words/vertical.js';

interface Props {
  kit: NonNullable<StageView['tracingKit']>;
  pending: boolean;
  error: unknown;
  onSave: (screw: StateBearingScrew) => void;
}

const LEAST_MM = 0.1;
const MOST_MM = 3;

/** Pitch and direction of the tracing set's screw: kept with the kit, not with the visit. */
export function ScrewForm({ kit: { label, screw }, pending, error, onSave }: Props) {
  const [pitch, setPitch] = useState(screw === null ? '' : String(screw.pitchMmPerTurn));
  const [raisesBy, setRaisesBy] = useState<StateBearingScrew['raisesBy']>(screw?.raisesBy ?? 'clockwise');
  const [tried, setTried] = useState(false);
  const pitchMmPerTurn = typedNumber(pitch);
  const isGood = pitchMmPerTurn !== null && pitchMmPerTurn >= LEAST_MM && pitchMmPerTurn <= MOST_MM;
  return (
    <section className="stack-tight" aria-label={words.screw(label)}>
      <h3>{words.screw(label)}</h3>
      <p>{screw === null ? words.screwMissing : words.screwKnown(screw.pitchMmPerTurn, screw.raisesBy)}</p>
      <details className="details" open={screw === null ? true : undefined}>
        <summary>{words.screwChange}</summary>
        <div className="row row-end">
          <TextInput
            label={words.pitch}
            inputMode="decimal"
            value={pitch}
            error={tried && !isGood ? words.pitchWanted : null}
            onChange={(event) => {
              setPitch(event.currentTarget.value);
            }}
          />
          <NativeSelect
            label={words.raisesBy}
            value={raisesBy}
            data={words.directions}
            onChange={(event) => {
              setRaisesBy(event.currentTarget.value === 'clockwise' ? 'clockwise' : 'counter-clockwise');
            }}
          />
          <Button
            variant="default"
            loading={pending}
            onClick={() => {
              setTried(true);
              if (isGood) onSave({ pitchMmPerTurn, raisesBy });
            }}
          >
            {words.screwSave}
          </Button>
        </div>
        <Refusal error={error} />
      </details>
    </section>
  );
}

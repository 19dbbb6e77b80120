import { Button, TextInput } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { useFirstProblem } from '../look/first-problem.js';
import { lotWords as words } from '../words/lots.js';

interface Props {
  lot: string;
  material: string;
  onFind: (lot: string, material: string) => void;
}

/** The number on the container, and the material where the number alone is not enough. */
export function LotForm({ lot, material, onFind }: Props) {
  const [typedLot, setLot] = useState(lot);
  const [typedMaterial, setMaterial] = useState(material);
  const [attempt, setAttempt] = useState(0);
  const lacks = attempt > 0 && typedLot.trim() === '';
  const form = useFirstProblem(attempt, lacks);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (typedLot.trim()) onFind(typedLot.trim(), typedMaterial.trim());
  }

  return (
    <form
      ref={form}
      onSubmit={submit}
      noValidate
      className="row row-end no-print"
      role="search"
      aria-label={words.link}
    >
      <TextInput
        label={words.lot}
        maxLength={60}
        value={typedLot}
        error={lacks ? words.need : null}
        onChange={(event) => {
          setLot(event.currentTarget.value);
        }}
      />
      <TextInput
        label={words.material}
        maxLength={120}
        value={typedMaterial}
        onChange={(event) => {
          setMaterial(event.currentTarget.value);
        }}
      />
      <Button type="submit">{words.find}</Button>
    </form>
  );
}

import { TextInput } from '@mantine/core';
import { useState } from 'react';
import { readBox, textInBox, type TypedBox } from './number-text.js';

interface Props {
  label?: string;
  'aria-label'?: string;
  /** The number that counts; null while there is none. */
  value: number | null;
  error?: string | undefined;
  /** Hears null while what stands in the box is no number; who keeps the number from before ignores it. */
  onChange: (value: number | null) => void;
}

/**
 * A number as it is typed. The box shows what was typed, not the number made from it: a box that is cleared to be filled
 * anew stays empty, and a half-typed "1." is not cut. Once the box is left it shows the number that counts.
 */
export function NumberBox({ value, onChange, ...rest }: Props) {
  const [typed, setTyped] = useState<TypedBox | null>(null);
  return (
    <TextInput
      {...rest}
      inputMode="decimal"
      autoComplete="off"
      value={textInBox(typed, value)}
      onChange={(event) => {
        const next = readBox(event.currentTarget.value, value);
        setTyped(next);
        onChange(next.read);
      }}
      onBlur={() => {
        if (value !== null) setTyped(null);
      }}
    />
  );
}

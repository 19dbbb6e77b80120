import { Input } from '@mantine/core';
import { useId } from 'react';

interface Props {
  label: string;
  accept: string;
  error: string | undefined;
  onPick: (file: File | null) => void;
}

/** The browser's own choice of a file, which every keyboard and screen reader knows. */
export function FileField({ label, accept, error, onPick }: Props) {
  const id = useId();
  return (
    <Input.Wrapper label={label} labelProps={{ htmlFor: id }} error={error}>
      <input
        id={id}
        type="file"
        className="file-input"
        accept={accept}
        aria-invalid={error !== undefined}
        onChange={(event) => {
          onPick(event.currentTarget.files?.[0] ?? null);
        }}
      />
    </Input.Wrapper>
  );
}

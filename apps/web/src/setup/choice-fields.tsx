import { Checkbox, NativeSelect } from '@mantine/core';
import { NumberBox } from '../look/number-box.js';
import { codesInWords, setupWords as words } from '../words/setup.js';

interface CodesProps {
  label: string;
  /** What published paths ask for; what the record has beside them stays to choose. */
  known: readonly string[];
  codes: readonly string[];
  onChange: (codes: string[]) => void;
}

export function CodesField({ label, known, codes, onChange }: CodesProps) {
  return (
    <fieldset className="stack-tight">
      <legend>{label}</legend>
      <div className="row ticks">
        {[...new Set([...known, ...codes])].map((code) => (
          <Checkbox
            key={code}
            label={codesInWords([code])}
            checked={codes.includes(code)}
            onChange={(event) => {
              const rest = codes.filter((each) => each !== code);
              onChange(event.currentTarget.checked ? [...rest, code] : rest);
            }}
          />
        ))}
      </div>
    </fieldset>
  );
}

interface BatchProps {
  /** Null, or the kind and the size as typed. */
  batch: unknown;
  error: string | undefined;
  onChange: (batch: { kind: string; size: unknown } | null) => void;
}

export function BatchField({ batch, error, onChange }: BatchProps) {
  const typed = batch as { kind: string; size: number | '' } | null;
  return (
    <div className="row row-end">
      <NativeSelect
        label={words.fields.batchKind}
        data={Object.entries(words.batches).map(([value, label]) => ({ value, label }))}
        value={typed?.kind ?? ''}
        onChange={(event) => {
          const kind = event.currentTarget.value;
          onChange(kind === '' ? null : { kind, size: typed?.size ?? 1 });
        }}
      />
      {typed === null ? null : (
        <NumberBox
          label={words.fields.batchSize}
          value={typed.size === '' ? null : typed.size}
          error={error}
          onChange={(size) => {
            onChange({ kind: typed.kind, size: size ?? '' });
          }}
        />
      )}
    </div>
  );
}

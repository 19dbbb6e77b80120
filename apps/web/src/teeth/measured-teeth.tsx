import { Button, NativeSelect, TextInput } from '@mantine/core';
import { TOOTH_TARGETS } from '@archwright/measures';
import { teethWords as words } from '../words/teeth.js';
import type { TeethDraft } from './teeth-draft.js';

type Width = TeethDraft['measured'][number];

interface Props {
  widths: readonly Width[];
  errors: Record<string, string | undefined>;
  onChange: (widths: Width[]) => void;
}

/** As many as one choice keeps. */
const MOST = 12;
const FIRST: Width = { target: 'central-incisor-width', object: 'old-denture', text: '' };
const TARGETS = TOOTH_TARGETS.map((value) => ({ value, label: words.targets[value] }));
const OBJECTS = Object.entries(words.objects).map(([value, label]) => ({ value, label }));

/** Widths of the old denture, of earlier photographs and of whatever else there is to compare with. */
export function MeasuredTeeth({ widths, errors, onChange }: Props) {
  const change = (index: number, part: Partial<Width>): void => {
    onChange(widths.map((width, at) => (at === index ? { ...width, ...part } : width)));
  };
  return (
    <section className="stack-tight" aria-label={words.measured}>
      <h3>{words.measured}</h3>
      {widths.map((width, index) => (
        <div key={index} className="row row-end">
          <NativeSelect
            label={words.target}
            value={width.target}
            data={TARGETS}
            onChange={(event) => {
              change(index, { target: event.currentTarget.value as Width['target'] });
            }}
          />
          <NativeSelect
            label={words.object}
            value={width.object}
            data={OBJECTS}
            onChange={(event) => {
              change(index, { object: event.currentTarget.value as Width['object'] });
            }}
          />
          <TextInput
            label={words.width}
            inputMode="decimal"
            value={width.text}
            error={errors[`measured.${String(index)}.valueMm`]}
            onChange={(event) => {
              change(index, { text: event.currentTarget.value });
            }}
          />
          <Button
            variant="subtle"
            aria-label={words.remove(index + 1)}
            onClick={() => {
              onChange(widths.filter((_, at) => at !== index));
            }}
          >
            ×
          </Button>
        </div>
      ))}
      {widths.length < MOST ? (
        <div>
          <Button
            variant="default"
            onClick={() => {
              onChange([...widths, { ...FIRST, ...widths.at(-1), text: '' }]);
            }}
          >
            {words.add}
          </Button>
        </div>
      ) : null}
    </section>
  );
}

import { useId } from 'react';

interface Props<Value extends string> {
  label: string;
  value: Value;
  choices: readonly { value: Value; label: string }[];
  onChange: (value: Value) => void;
}

/** A few choices side by side, each as large as a fingertip. */
export function Choice<Value extends string>({ label, value, choices, onChange }: Props<Value>) {
  const name = useId();
  return (
    <div role="radiogroup" aria-label={label} className="pad-choice">
      {choices.map((choice) => (
        <label key={choice.value}>
          <input
            type="radio"
            name={name}
            checked={choice.value === value}
            onChange={() => {
              onChange(choice.value);
            }}
          />
          {choice.label}
        </label>
      ))}
    </div>
  );
}

import { Button, TextInput } from '@mantine/core';
import { userWords as words } from '../words/users.js';
import { suggestedPassword } from './user-draft.js';

interface Props {
  value: string;
  error: string | undefined;
  onChange: (password: string) => void;
}

/** A password that one person hands to another, in plain sight for that reason. */
export function PasswordField({ value, error, onChange }: Props) {
  return (
    <div className="row row-end">
      <TextInput
        label={words.fields.password}
        description={words.passwordHint}
        autoComplete="off"
        value={value}
        error={error}
        onChange={(event) => {
          onChange(event.currentTarget.value);
        }}
      />
      <Button
        variant="default"
        onClick={() => {
          onChange(suggestedPassword(randomBelow));
        }}
      >
        {words.suggest}
      </Button>
    </div>
  );
}

/** Numbers above the last whole multiple are drawn again, so that no letter comes more often than another. */
function randomBelow(below: number): number {
  const limit = 256 - (256 % below);
  for (;;) {
    const [drawn = 0] = crypto.getRandomValues(new Uint8Array(1));
    if (drawn < limit) return drawn % below;
  }
}

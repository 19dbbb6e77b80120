import { Button, TextInput } from '@mantine/core';
import type { HandedOver } from '@archwright/contracts';
import { useRef, useState } from 'react';
import { packWords as words } from '../words/parcels.js';

interface Props {
  /** Said where something has to be added before it goes on. */
  wanted: string | null;
  onAdd: (named: HandedOver) => void;
}

/** Both names of one thing, read off its label; Enter in the last field adds it. */
export function TwoNames({ wanted, onAdd }: Props) {
  const [caseNumber, setCaseNumber] = useState('');
  const [code, setCode] = useState('');
  const [tried, setTried] = useState(false);
  const first = useRef<HTMLInputElement>(null);
  const second = useRef<HTMLInputElement>(null);
  const lacks = (text: string): string | null => (tried && text.trim() === '' ? words.twoMissing : null);

  function add(): void {
    setTried(true);
    if (caseNumber.trim() === '') {
      first.current?.focus();
      return;
    }
    if (code.trim() === '') {
      second.current?.focus();
      return;
    }
    onAdd({ caseNumber: caseNumber.trim(), code: code.trim() });
    setCaseNumber('');
    setCode('');
    setTried(false);
    // The next label is read off at once.
    first.current?.focus();
  }

  return (
    <div className="stack-tight">
      <div className="halves">
        <TextInput
          ref={first}
          label={words.caseNumber}
          maxLength={20}
          value={caseNumber}
          error={lacks(caseNumber) ?? wanted}
          onChange={(event) => {
            setCaseNumber(event.currentTarget.value);
          }}
        />
        <TextInput
          ref={second}
          label={words.code}
          maxLength={120}
          value={code}
          error={lacks(code)}
          onChange={(event) => {
            setCode(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            // A reader of labels ends with Enter: that adds the thing and sends nothing yet.
            event.preventDefault();
            add();
          }}
        />
      </div>
      <div>
        <Button variant="default" onClick={add}>
          {words.add}
        </Button>
      </div>
    </div>
  );
}

import { Button, TextInput } from '@mantine/core';
import type { HandedOver } from '@archwright/contracts';
import { useState } from 'react';
import { packWords as words } from '../words/parcels.js';

/** Both names of one thing, read off its label; Enter in the last field adds it. */
export function TwoNames({ onAdd }: { onAdd: (named: HandedOver) => void }) {
  const [caseNumber, setCaseNumber] = useState('');
  const [code, setCode] = useState('');
  const [tried, setTried] = useState(false);
  const lacks = (text: string): string | null => (tried && text.trim() === '' ? words.twoMissing : null);

  function add(): void {
    setTried(true);
    if (caseNumber.trim() === '' || code.trim() === '') return;
    onAdd({ caseNumber: caseNumber.trim(), code: code.trim() });
    setCaseNumber('');
    setCode('');
    setTried(false);
  }

  return (
    <div className="stack-tight">
      <div className="halves">
        <TextInput
          label={words.caseNumber}
          maxLength={20}
          value={caseNumber}
          error={lacks(caseNumber)}
          onChange={(event) => {
            setCaseNumber(event.currentTarget.value);
          }}
        />
        <TextInput
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

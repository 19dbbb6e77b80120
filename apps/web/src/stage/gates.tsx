import { Button, Textarea } from '@mantine/core';
import type { GateView, OverrideGate } from '@archwright/contracts';
import { useState } from 'react';
import { fieldErrors } from '../api/errors.js';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { stageWords as words } from '../words/chair.js';

/** The gate that a finding after the visit closes: setting it aside answers the finding. */
const LATE_FINDING = 'late-finding';

const overrideWords = ({ code }: GateView): string => (code === LATE_FINDING ? words.lateFinding : words.override);

interface Props {
  gates: GateView[];
  pending: boolean;
  error: unknown;
  onOverride: (body: OverrideGate, done: () => void) => void;
}

/** What is still missing, gate by gate. A clinician may set one aside, with a reason that stays on the record. */
export function Gates({ gates, pending, error, onOverride }: Props) {
  const [gate, setGate] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  if (gates.length === 0) return null;

  function send(): void {
    setTried(true);
    if (gate === null || reason.trim().length < 10) return;
    onOverride({ gate, reason: reason.trim() }, () => {
      setGate(null);
      setReason('');
      setTried(false);
    });
  }

  return (
    <section className="sheet" aria-labelledby="gates">
      <h2 id="gates" className="line">
        {words.gates}
      </h2>
      <ul>
        {gates.map((item) => (
          <li key={item.code} className="line stack-tight verdict">
            <div className="row">
              <Tag tone={item.open ? (item.hard ? 'stop' : 'caution') : 'go'}>
                {item.open ? (item.hard ? words.gateHard : words.gateSoft) : words.gateClosed}
              </Tag>
              <span className="strong">{item.title}</span>
            </div>
            {item.overriddenBy ? <p className="soft">{words.overriddenBy(item.overriddenBy)}</p> : null}
            {item.open && item.missing.length > 0 ? (
              <>
                <p>{words.gateOpen}:</p>
                <ul className="bullets">
                  {item.missing.map((missing) => (
                    <li key={missing}>{missing}</li>
                  ))}
                </ul>
              </>
            ) : null}
            {item.open && item.closesAtHandOver ? <p className="soft">{words.closesAtHandOver}</p> : null}
            {item.open && !item.overridable && !item.closesAtHandOver ? (
              <p className="soft">{words.notOverridable}</p>
            ) : null}
            {item.open && item.code === LATE_FINDING ? <p className="soft">{words.lateFindingElse}</p> : null}
            {item.open && item.overridable && gate !== item.code ? (
              <div>
                <Button
                  variant="default"
                  aria-label={`${overrideWords(item)}: ${item.title}`}
                  onClick={() => {
                    setGate(item.code);
                    setTried(false);
                  }}
                >
                  {overrideWords(item)}
                </Button>
              </div>
            ) : null}
            {gate === item.code ? (
              <div className="stack-tight">
                <Textarea
                  label={words.overrideReason}
                  value={reason}
                  maxLength={500}
                  error={
                    fieldErrors(error)['reason'] ?? (tried && reason.trim().length < 10 ? words.overrideMissing : null)
                  }
                  onChange={(event) => {
                    setReason(event.currentTarget.value);
                  }}
                />
                <Refusal error={error} />
                <div>
                  <Button loading={pending} onClick={send}>
                    {words.overrideGo}
                  </Button>
                </div>
              </div>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

import { Button } from '@mantine/core';
import type { GateView, OverrideGate } from '@archwright/contracts';
import { useState } from 'react';
import { TextForm } from '../drafts/text-form.js';
import type { Sending } from '../drafts/use-fields-form.js';
import { Tag } from '../look/marks.js';
import { stageWords as words } from '../words/chair.js';

/** The gate that a finding after the visit closes: setting it aside answers the finding. */
const LATE_FINDING = 'late-finding';

const overrideWords = ({ code }: GateView): string => (code === LATE_FINDING ? words.lateFinding : words.override);

/** What the service asks of a reason at least. */
const LEAST_REASON = 10;

interface Props {
  stageId: string;
  gates: GateView[];
  override: Sending<OverrideGate>;
}

/** What is still missing, gate by gate. A clinician may set one aside, with a reason that stays on the record. */
export function Gates({ stageId, gates, override }: Props) {
  const [gate, setGate] = useState<string | null>(null);
  if (gates.length === 0) return null;

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
                    override.reset();
                  }}
                >
                  {overrideWords(item)}
                </Button>
              </div>
            ) : null}
            {gate === item.code ? (
              <TextForm
                draftKey={`override.${stageId}.${item.code}`}
                label={words.overrideReason}
                missing={words.overrideMissing}
                least={LEAST_REASON}
                path="reason"
                go={words.overrideGo}
                isMain
                send={{
                  ...override,
                  mutateAsync: (reason) => override.mutateAsync({ gate: item.code, reason }),
                }}
                onSent={() => {
                  setGate(null);
                }}
              />
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

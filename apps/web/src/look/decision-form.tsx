import { Button, Textarea } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { decisionWords as words } from '../words/frame.js';
import { DateField } from './date-field.js';
import { useFirstProblem } from './first-problem.js';
import { Refusal } from './notice.js';
import { isOutrun, Outrun } from './outrun.js';

export interface Choice<Key extends string> {
  key: Key;
  label: string;
  /** What follows from it, said before it is done. */
  then: string;
  /** The date that goes with it. */
  date?: { label: string; missing: string };
  /** The reason may stay empty. */
  mayBeSilent?: boolean;
  /** False where there is nothing to give reasons for. */
  hasReason?: false;
}

export interface Given<Key extends string> {
  key: Key;
  reason: string;
  /** Empty where the choice has no date. */
  on: string;
}

interface Props<Key extends string> {
  /** Whom or what it is about: several of these forms stand on one screen. */
  about: string;
  choices: readonly Choice<Key>[];
  /** Names that the call has for the two fields. */
  paths: { reason: string; on?: string };
  pending: boolean;
  error: unknown;
  onDecide: (given: Given<Key>) => void;
}

/** One of a few decisions, and then its reason: buttons first, so that a list stays short. */
export function DecisionForm<Key extends string>({ about, choices, paths, pending, error, onDecide }: Props<Key>) {
  const [key, setKey] = useState<Key | null>(null);
  const [reason, setReason] = useState('');
  const [on, setOn] = useState('');
  const [attempt, setAttempt] = useState(0);
  const choice = choices.find((each) => each.key === key);
  const refused = fieldErrors(error);
  const lacksReason = choice?.hasReason !== false && !choice?.mayBeSilent && reason.trim() === '';
  const lacksDate = choice?.date !== undefined && on === '';
  const reasonError = attempt > 0 && lacksReason ? words.reasonMissing : refused[paths.reason];
  const dateError = attempt > 0 && lacksDate ? choice.date?.missing : refused[paths.on ?? ''];
  const form = useFirstProblem(attempt, Boolean(reasonError ?? dateError));

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!choice || lacksDate || lacksReason) return;
    onDecide({ key: choice.key, reason: reason.trim(), on: choice.date ? on : '' });
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack-tight no-print">
      <div className="row" role="group" aria-label={words.about(about)}>
        {choices.map((each) => (
          <Button
            key={each.key}
            variant={each.key === key ? 'filled' : 'default'}
            aria-pressed={each.key === key}
            onClick={() => {
              setAttempt(0);
              setKey(each.key === key ? null : each.key);
            }}
          >
            {each.label}
          </Button>
        ))}
      </div>
      <Outrun error={error} />
      {choice ? (
        <>
          <p className="soft">{choice.then}</p>
          {choice.date ? <DateField label={choice.date.label} value={on} error={dateError} onChange={setOn} /> : null}
          {choice.hasReason === false ? null : (
            <Textarea
              label={choice.mayBeSilent ? words.note : words.reason}
              value={reason}
              maxLength={500}
              rows={2}
              error={reasonError}
              onChange={(event) => {
                setReason(event.currentTarget.value);
              }}
            />
          )}
          <Refusal error={isOutrun(error) || isPlaced(refused, paths) ? null : error} />
          <div>
            <Button type="submit" loading={pending} aria-label={words.saveOf(choice.label, about)}>
              {words.save}
            </Button>
          </div>
        </>
      ) : null}
    </form>
  );
}

/** Whether every refusal stands beside one of the two fields already. */
function isPlaced(refused: Record<string, string>, { reason, on }: { reason: string; on?: string }): boolean {
  const paths = Object.keys(refused);
  return paths.length > 0 && paths.every((path) => path === reason || path === on);
}

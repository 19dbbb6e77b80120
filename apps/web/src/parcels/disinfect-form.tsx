import { Button, NativeSelect, TextInput } from '@mantine/core';
import { declareDisinfection, type DeclareDisinfection } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { typedMinute } from '../change-visit/change-visit-view.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { disinfectionWords as words } from '../words/parcels.js';

const METHODS = Object.entries(words.methods).map(([value, label]) => ({ value, label }));

interface Props {
  caution: string;
  clock: { zone: string; today: string };
  pending: boolean;
  error: unknown;
  onDeclare: (body: DeclareDisinfection, done: () => void) => void;
}

/** Somebody's word that a thing was disinfected here; what the word is worth stands above it. */
export function DisinfectForm({ caution, clock, pending, error, onDeclare }: Props) {
  const [agent, setAgent] = useState('');
  const [method, setMethod] = useState('immersion');
  const [day, setDay] = useState(clock.today);
  const [time, setTime] = useState('');
  const [attempt, setAttempt] = useState(0);
  const at = typedMinute(day, time, clock.zone);
  const refused = fieldErrors(error);
  const agentError = attempt > 0 && agent.trim() === '' ? words.need.agent : refused['agent'];
  const atError = attempt > 0 && at === null ? words.need.at : refused['at'];
  const form = useFirstProblem(attempt, Boolean(agentError ?? atError));

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    const body = declareDisinfection.safeParse({ agent, method, at });
    if (!body.success) return;
    onDeclare(body.data, () => {
      setAgent('');
      setAttempt(0);
    });
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack-tight">
      <Notice tone="caution">{caution}</Notice>
      <div className="halves">
        <TextInput
          label={words.agent}
          maxLength={80}
          value={agent}
          error={agentError}
          onChange={(event) => {
            setAgent(event.currentTarget.value);
          }}
        />
        <NativeSelect
          label={words.method}
          data={METHODS}
          value={method}
          onChange={(event) => {
            setMethod(event.currentTarget.value);
          }}
        />
        <TextInput
          type="date"
          max={clock.today}
          label={words.day}
          value={day}
          onChange={(event) => {
            setDay(event.currentTarget.value);
          }}
        />
        <TextInput
          type="time"
          label={words.time}
          value={time}
          error={atError}
          onChange={(event) => {
            setTime(event.currentTarget.value);
          }}
        />
      </div>
      <Outrun error={error} />
      <Refusal error={isOutrun(error) || refused['at'] || refused['agent'] ? null : error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.declare}
        </Button>
      </div>
    </form>
  );
}

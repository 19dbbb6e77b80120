import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { PracticeView, StageView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { dateAndTime } from '../time/wording.js';
import { labOrderWords } from '../words/lab-orders.js';
import { isOut, toOrder, type OrderDraft } from './lab-order-view.js';
import { useStageOrder } from './use-lab-orders.js';

const { send: words, states } = labOrderWords;
const EMPTY: OrderDraft = { laboratoryId: '', day: '', time: '' };

interface Props {
  view: StageView;
  practice: Pick<PracticeView, 'orderedFrom' | 'today'>;
}

/** The signed work of a stage given to a laboratory of its own, and how such an order stands. */
export function SendOrder({ view: { id, zone }, practice: { orderedFrom, today } }: Props) {
  const { orders, send } = useStageOrder(id);
  const [draft, setDraft] = useState(EMPTY);
  const [attempt, setAttempt] = useState(0);
  const { body, wrong } = toOrder(draft, id, zone);
  const refused = fieldErrors(send.error);
  const errors = {
    laboratory: (attempt > 0 ? wrong.laboratory : null) ?? refused.laboratoryId,
    time: (attempt > 0 ? wrong.time : null) ?? refused.neededBy,
  };
  const form = useFirstProblem(attempt, (errors.laboratory ?? errors.time) !== undefined);
  const last = orders.data?.items[0];
  const boxOf = (field: keyof OrderDraft) => ({
    value: draft[field],
    onChange: ({ currentTarget }: { currentTarget: { value: string } }) => {
      setDraft((before) => ({ ...before, [field]: currentTarget.value }));
      // What the service refused was another draft.
      send.reset();
    },
  });

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (body !== null) send.mutate(body);
  }

  return (
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="send-order">
      <h2 id="send-order">{words.title}</h2>
      <Refusal error={orders.error} onRetry={() => void orders.refetch()} />
      {last === undefined ? null : (
        <p role="status">
          {words.out(last.laboratoryName ?? '', dateAndTime(last.neededBy, zone, today))} {states[last.state]}.{' '}
          <Link to="/desk/lab-orders">{words.all}</Link>
        </p>
      )}
      {orders.data === undefined || (last !== undefined && (isOut(last) || last.state === 'finished')) ? null : (
        <details className="details">
          <summary>{words.open}</summary>
          <form ref={form} onSubmit={submit} noValidate className="stack-tight">
            <p className="soft">{words.what}</p>
            <NativeSelect
              label={words.laboratory}
              data={[
                { value: '', label: words.choose },
                ...orderedFrom.map(({ id: value, name: label }) => ({ value, label })),
              ]}
              error={errors.laboratory}
              {...boxOf('laboratoryId')}
            />
            <div className="row row-end">
              <TextInput
                type="date"
                min={today}
                label={words.day}
                error={errors.time !== undefined}
                {...boxOf('day')}
              />
              <TextInput type="time" label={words.time} error={errors.time} {...boxOf('time')} />
            </div>
            <Refusal error={Object.keys(refused).length > 0 ? null : send.error} />
            <div>
              <Button type="submit" loading={send.isPending}>
                {words.send}
              </Button>
            </div>
          </form>
        </details>
      )}
    </section>
  );
}

import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { PracticeView, StageView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { useFieldsForm } from '../drafts/use-fields-form.js';
import { DateField } from '../look/date-field.js';
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
  const { form, errors, refusal, boxOf, fieldOf, submit } = useFieldsForm({
    key: `order.${id}`,
    empty: EMPTY,
    read: (draft) => toOrder(draft, id, zone),
    send,
  });
  const last = orders.data?.items[0];
  const timeError = errors.time ?? errors.neededBy;

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
              {...boxOf('laboratoryId')}
            />
            <div className="row row-end">
              <DateField min={today} label={words.day} {...fieldOf('day')} error={timeError !== undefined} />
              <TextInput type="time" label={words.time} {...boxOf('time')} error={timeError} />
            </div>
            <Refusal error={refusal} />
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

import { Button, NativeSelect, TextInput } from '@mantine/core';
import { declareDisinfection, type DeclareDisinfection } from '@archwright/contracts';
import { typedMinute } from '../change-visit/change-visit-view.js';
import { useFieldsForm, type Sending } from '../drafts/use-fields-form.js';
import { DateField } from '../look/date-field.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { disinfectionWords as words } from '../words/parcels.js';

const METHODS = Object.entries(words.methods).map(([value, label]) => ({ value, label }));

interface Props {
  objectId: string;
  caution: string;
  clock: { zone: string; today: string };
  declare: Sending<DeclareDisinfection>;
}

/** Somebody's word that a thing was disinfected here; what the word is worth stands above it. */
export function DisinfectForm({ objectId, caution, clock, declare }: Props) {
  const { form, refusal, boxOf, fieldOf, submit } = useFieldsForm({
    key: `disinfect.${objectId}`,
    empty: { agent: '', method: 'immersion', day: clock.today, time: '' },
    read: ({ agent, method, day, time }) => {
      const at = typedMinute(day, time, clock.zone);
      return {
        body: declareDisinfection.safeParse({ agent, method, at }).data ?? null,
        wrong: {
          ...(agent.trim() === '' ? { agent: words.need.agent } : {}),
          ...(at === null ? { time: words.need.at } : {}),
        },
      };
    },
    send: declare,
    paths: { time: 'at' },
  });

  return (
    <form ref={form} onSubmit={submit} noValidate className="stack-tight">
      <Notice tone="caution">{caution}</Notice>
      <div className="halves">
        <TextInput label={words.agent} maxLength={80} {...boxOf('agent')} />
        <NativeSelect label={words.method} data={METHODS} {...boxOf('method')} />
        <DateField max={clock.today} label={words.day} {...fieldOf('day')} />
        <TextInput type="time" label={words.time} {...boxOf('time')} />
      </div>
      <Outrun error={refusal} />
      <Refusal error={isOutrun(refusal) ? null : refusal} />
      <div>
        <Button type="submit" loading={declare.isPending}>
          {words.declare}
        </Button>
      </div>
    </form>
  );
}

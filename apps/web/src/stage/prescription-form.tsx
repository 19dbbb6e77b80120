import { Button, Textarea, TextInput } from '@mantine/core';
import type { SignPrescription, StageView } from '@archwright/contracts';
import { useFieldsForm, type Sending } from '../drafts/use-fields-form.js';
import { DateField } from '../look/date-field.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { dateAndTime } from '../time/wording.js';
import { stageWords as words } from '../words/chair.js';
import { emptyPrescription, readPrescription, writtenOn } from './prescription-draft.js';
import { PrescriptionPreview } from './prescription-preview.js';

interface Props {
  stageId: string;
  zone: string;
  today: string;
  /** The hand-over in force, if it was signed. */
  inForce: NonNullable<StageView['prescription']>;
  prescribe: Sending<SignPrescription>;
}

/** The hand-over to the laboratory. It is signed by the person who sends it; a later one takes its place. */
export function PrescriptionForm({ stageId, zone, today, inForce, prescribe }: Props) {
  const { form, draft, errors, refusal, boxOf, fieldOf, submit } = useFieldsForm({
    key: `prescription.${stageId}`,
    empty: emptyPrescription(today),
    read: (draft) => readPrescription(draft, zone),
    send: prescribe,
    paths: { agent: 'disinfection.agent', time: 'disinfection.at' },
  });
  return (
    <section className="sheet sheet-pad stack-tight no-print" aria-labelledby="prescription">
      <h2 id="prescription">{words.prescription}</h2>
      {inForce.signedAt === null ? null : (
        <Notice tone="go">{words.signed(dateAndTime(inForce.signedAt, zone, today), inForce.signedBy ?? '')}</Notice>
      )}
      <details className="details" key={inForce.signedAt ?? 'unsigned'}>
        <summary>{inForce.signedAt === null ? words.signOpen : words.signAnew}</summary>
        <form ref={form} onSubmit={submit} noValidate className="stack-tight">
          <div className="halves">
            <TextInput label={words.shade} maxLength={60} {...boxOf('shade')} />
            <TextInput label={words.mould} maxLength={60} {...boxOf('mould')} />
          </div>
          <TextInput label={words.agent} required maxLength={80} {...boxOf('agent')} />
          <div className="row row-end">
            <DateField label={words.at} max={today} required {...fieldOf('day')} error={errors['time'] !== undefined} />
            <TextInput type="time" aria-label={words.at} {...boxOf('time')} />
          </div>
          <Textarea label={words.note} maxLength={1000} {...boxOf('note')} />
          <PrescriptionPreview stageId={stageId} given={writtenOn(draft)} />
          <Outrun error={refusal} />
          <Refusal error={isOutrun(refusal) ? null : refusal} />
          <div>
            <Button type="submit" size="md" loading={prescribe.isPending}>
              {words.sign}
            </Button>
          </div>
        </form>
      </details>
    </section>
  );
}

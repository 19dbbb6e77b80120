import { Button, TextInput } from '@mantine/core';
import type { PhotographView } from '@archwright/contracts';
import { useState } from 'react';
import { useFieldsForm, type Sending } from '../drafts/use-fields-form.js';
import { FileField } from '../look/file-field.js';
import { Refusal } from '../look/notice.js';
import { photographWords as words } from '../words/photographs.js';

/** The picture itself lies in the field that it was chosen in: a browser gives no file back after a reload. */
const EMPTY = { caption: '', picture: '' };

interface Props {
  stageId: string;
  keep: Sending<{ caption: string; file: File }, PhotographView>;
}

/** A photograph from a file or the camera of the tablet, with what it shows. */
export function KeepForm({ stageId, keep }: Props) {
  const [file, setFile] = useState<File | null>(null);
  const { form, errors, refusal, boxOf, submit } = useFieldsForm({
    key: `photograph.${stageId}`,
    empty: EMPTY,
    read: (draft) => {
      const caption = draft.caption.trim();
      return {
        body: file === null || caption === '' ? null : { caption, file },
        wrong: {
          ...(file === null ? { picture: words.need.picture } : {}),
          ...(caption === '' ? { caption: words.need.caption } : {}),
        },
      };
    },
    send: keep,
    paths: { picture: 'jpeg' },
    onSent: () => {
      setFile(null);
      form.current?.reset();
    },
  });
  return (
    <form ref={form} onSubmit={submit} noValidate className="stack-tight no-print">
      <p className="small soft">{words.permission}</p>
      <FileField
        label={words.picture}
        accept="image/*"
        error={errors['picture']}
        onPick={(picked) => {
          setFile(picked);
          if (!keep.isPending) keep.reset();
        }}
      />
      <TextInput label={words.caption} description={words.captionHint} maxLength={200} {...boxOf('caption')} />
      <Refusal error={refusal} />
      <div>
        <Button type="submit" loading={keep.isPending}>
          {words.keep}
        </Button>
      </div>
    </form>
  );
}

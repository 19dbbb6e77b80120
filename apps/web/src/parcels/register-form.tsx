import { Button, NativeSelect, TextInput } from '@mantine/core';
import { registerObject, type ObjectView, type RegisterObject } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { z } from 'zod';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { objectWords, packWords, registerWords as words } from '../words/parcels.js';

const { kind: objectKind } = registerObject.shape;
const KINDS = objectKind.options.map((value) => ({ value, label: objectWords.kind[value] }));
const ARCHES = Object.entries(words.arches).map(([value, label]) => ({ value, label }));

/** It stays after it was sent: what comes next is often of the same case. */
const typed = z.object({
  number: z.string(),
  kind: objectKind,
  arch: z.string(),
  place: z.string(),
  holderId: z.string(),
});
type Typed = z.output<typeof typed>;

interface Props {
  /** The person's own clinics, or laboratories. */
  holders: readonly { id: string; name: string }[];
  end: 'clinicId' | 'laboratoryId';
  pending: boolean;
  error: unknown;
  /** Null: no case has the number; undefined: nothing was asked yet. */
  registered: ObjectView | null | undefined;
  onRegister: (body: Omit<RegisterObject, 'caseId'> & { number: string }) => void;
}

/** Something that is followed from hand to hand from now on; its code is made by the service and written on it. */
export function RegisterForm({ holders, end, pending, error, registered, onRegister }: Props) {
  const [draft, change] = useKeptDraft(
    `register.${end}`,
    (): Typed => ({ number: '', kind: 'impression', arch: '', place: '', holderId: holders[0]?.id ?? '' }),
    (kept) => typed.safeParse(kept).data ?? null,
  );
  const { number, kind, arch, place, holderId } = draft;
  const [attempt, setAttempt] = useState(0);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (number.trim() === '' || pending) return;
    onRegister({
      number: number.trim(),
      kind,
      arch: arch === 'upper' || arch === 'lower' ? arch : null,
      round: 1,
      [end]: holderId,
      place: place.trim() || null,
      useBy: null,
    });
  }

  const isUnknown = attempt > 0 && (number.trim() === '' || registered === null);
  const form = useFirstProblem(attempt, isUnknown);
  return (
    <form ref={form} onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h2>{words.title}</h2>
      <div className="halves">
        <TextInput
          label={packWords.caseNumber}
          maxLength={20}
          value={number}
          error={isUnknown ? words.unknownCase : null}
          onChange={(event) => {
            change({ ...draft, number: event.currentTarget.value });
          }}
        />
        <NativeSelect
          label={words.kind}
          data={KINDS}
          value={kind}
          onChange={(event) => {
            change({ ...draft, kind: objectKind.safeParse(event.currentTarget.value).data ?? 'other' });
          }}
        />
        <NativeSelect
          label={words.arch}
          data={ARCHES}
          value={arch}
          onChange={(event) => {
            change({ ...draft, arch: event.currentTarget.value });
          }}
        />
        {holders.length > 1 ? (
          <NativeSelect
            label={words.holder}
            data={holders.map(({ id, name }) => ({ value: id, label: name }))}
            value={holderId}
            onChange={(event) => {
              change({ ...draft, holderId: event.currentTarget.value });
            }}
          />
        ) : null}
        <TextInput
          label={words.place}
          maxLength={80}
          value={place}
          onChange={(event) => {
            change({ ...draft, place: event.currentTarget.value });
          }}
        />
      </div>
      {registered ? <Notice tone="go">{words.done(registered.code)}</Notice> : null}
      <Refusal error={error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.go}
        </Button>
      </div>
    </form>
  );
}

import { Button, Textarea } from '@mantine/core';
import type { ReactNode } from 'react';
import { Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { useFieldsForm, type Sending } from './use-fields-form.js';

interface Props<Answer> {
  /** Names the form and whom it is about. */
  draftKey: string;
  label: string;
  /** Where several of these stand on one screen. */
  ariaLabel?: string;
  /** What would be accepted, said when the text is shorter. */
  missing: string;
  least?: number;
  /** The name that the call has for the text. */
  path: string;
  go: string;
  isMain?: boolean;
  autoFocus?: boolean;
  className?: string;
  /** The call that takes the text, trimmed. */
  send: Sending<string, Answer>;
  onSent?: (answer: Answer) => void;
  /** Says of itself what was refused; else it is said here. */
  isRefusedElsewhere?: boolean;
  /** Beside the button. */
  children?: ReactNode;
}

const EMPTY = { text: '' };

/** A text of up to 500 characters without which something is not done: a reason, a question, an answer. */
export function TextForm<Answer>(props: Props<Answer>) {
  const { missing, least = 1, send } = props;
  const { form, refusal, boxOf, submit } = useFieldsForm({
    key: props.draftKey,
    empty: EMPTY,
    read: ({ text }) => {
      const isEnough = text.trim().length >= least;
      return { body: isEnough ? text.trim() : null, wrong: isEnough ? {} : { text: missing } };
    },
    send,
    paths: { text: props.path },
    ...(props.onSent ? { onSent: props.onSent } : {}),
  });
  return (
    <form ref={form} onSubmit={submit} noValidate className={`stack-tight ${props.className ?? ''}`}>
      <Textarea
        label={props.label}
        aria-label={props.ariaLabel}
        required
        maxLength={500}
        rows={2}
        autoFocus={props.autoFocus}
        {...boxOf('text')}
      />
      {props.isRefusedElsewhere ? null : (
        <>
          <Outrun error={refusal} />
          <Refusal error={isOutrun(refusal) ? null : refusal} />
        </>
      )}
      <div className="row">
        <Button type="submit" variant={props.isMain ? 'filled' : 'default'} loading={send.isPending}>
          {props.go}
        </Button>
        {props.children}
      </div>
    </form>
  );
}

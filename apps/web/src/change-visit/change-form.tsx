import { Button, Radio, Textarea } from '@mantine/core';
import type { AlternativesView, PreviewCancel, PreviewMove } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { useKeptDraft } from '../drafts/use-kept-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
import { startOfDayMs } from '../time/zone.js';
import { changeWords as words } from '../words/case.js';
import { CancelFields } from './cancel-fields.js';
import { changeKey, readChangeDraft, type ChangeDraft } from './change-draft.js';
import { dayAfter, startChoices, typedInstant, type VisitOfCase } from './change-visit-view.js';
import { chosenStart, MoveFields, OTHER } from './move-fields.js';

interface Props {
  appointmentId: string;
  visit: VisitOfCase;
  zone: string;
  today: string;
  alternatives: AlternativesView | undefined;
  isLooking: boolean;
  pending: boolean;
  /** What was asked before no longer counts. */
  onEdit: () => void;
  onMove: (body: PreviewMove) => void;
  onCancel: (body: PreviewCancel) => void;
}

/** What to do with the visit. It only asks for a preview. */
export function ChangeForm(props: Props) {
  const { appointmentId, visit, zone, today, alternatives, isLooking, pending, onEdit, onMove, onCancel } = props;
  const [draft, change] = useKeptDraft(
    changeKey(appointmentId),
    (): ChangeDraft => ({
      what: visit.isMissed ? 'cancel' : 'move',
      move: { start: '', date: '', time: '' },
      cancel: { then: 'replan', againOn: dayAfter(visit.startsAt, zone, today) },
      reason: visit.isMissed ? words.didNotCome : '',
    }),
    readChangeDraft,
  );
  const { move, cancel, reason } = draft;
  const what = visit.isMissed ? 'cancel' : draft.what;
  const [attempt, setAttempt] = useState(0);
  const choices = alternatives ? startChoices(alternatives, today) : isLooking ? null : [];
  const chosen = chosenStart(move, choices);
  const typed = typedInstant(move.date, move.time, alternatives?.zone ?? zone);
  const why = reason.trim();
  const tried = attempt > 0;
  const timeMissing = what === 'move' && chosen === OTHER && typed === null;
  const reasonMissing = what === 'cancel' && why === '';
  const form = useFirstProblem(attempt, timeMissing || reasonMissing);

  function preview(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (timeMissing || reasonMissing || (what === 'move' && choices === null)) return;
    if (what === 'cancel') {
      const isHeldBack = cancel.then === 'replan' && cancel.againOn !== '';
      const notBefore = new Date(startOfDayMs(cancel.againOn || today, zone)).toISOString();
      onCancel({ appointmentId, reason: why, then: cancel.then, ...(isHeldBack ? { notBefore } : {}) });
      return;
    }
    const [startsAt = '', clinicianId] = chosen === OTHER ? [typed ?? ''] : chosen.split(' ');
    onMove({ appointmentId, startsAt, ...(clinicianId ? { clinicianId } : {}), ...(why ? { reason: why } : {}) });
  }

  return (
    <form ref={form} className="sheet sheet-pad stack" onSubmit={preview} onChange={onEdit} noValidate>
      {visit.isMissed ? null : (
        <Radio.Group
          label={words.what}
          value={what}
          onChange={(value) => {
            change({ ...draft, what: value === 'cancel' ? 'cancel' : 'move' });
          }}
        >
          <div className="row ticks">
            <Radio value="move" label={words.move} />
            <Radio value="cancel" label={words.cancel} />
          </div>
        </Radio.Group>
      )}
      {what === 'move' ? (
        <MoveFields
          draft={move}
          choices={choices}
          today={today}
          error={tried && timeMissing ? words.otherMissing : null}
          onChange={(typedMove) => {
            change({ ...draft, move: typedMove });
          }}
        />
      ) : (
        <CancelFields
          draft={cancel}
          today={today}
          onChange={(typedCancel) => {
            change({ ...draft, cancel: typedCancel });
          }}
        />
      )}
      <Textarea
        label={words.reason}
        required={what === 'cancel'}
        maxLength={500}
        value={reason}
        error={tried && reasonMissing ? words.reasonMissing : null}
        onChange={(event) => {
          change({ ...draft, reason: event.currentTarget.value });
        }}
      />
      <div>
        <Button type="submit" loading={pending}>
          {words.preview}
        </Button>
      </div>
    </form>
  );
}

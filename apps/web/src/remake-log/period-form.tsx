import { Button } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { DateField } from '../look/date-field.js';
import { useFirstProblem } from '../look/first-problem.js';
import { remakeLogWords as words } from '../words/remake-log.js';
import { isPeriod, type Period } from './remake-log-view.js';

/** First and last day of what is counted. */
export function PeriodForm({ period, onShow }: { period: Period; onShow: (period: Period) => void }) {
  const [draft, setDraft] = useState(period);
  const [attempt, setAttempt] = useState(0);
  const isWrong = attempt > 0 && !isPeriod(draft);
  const form = useFirstProblem(attempt, isWrong);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (isPeriod(draft)) onShow(draft);
  }

  return (
    <form ref={form} className="stack-tight no-print" onSubmit={submit} noValidate>
      <div className="row row-end">
        {(['from', 'until'] as const).map((field) => (
          <DateField
            key={field}
            label={words[field]}
            value={draft[field]}
            error={isWrong}
            onChange={(day) => {
              setDraft({ ...draft, [field]: day });
            }}
          />
        ))}
        <Button type="submit" variant="default">
          {words.show}
        </Button>
      </div>
      {isWrong ? (
        <p className="field-error" role="alert">
          {words.periodWrong}
        </p>
      ) : null}
    </form>
  );
}

import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import { AnswerError, OfflineError, ProblemError } from '../api/errors.js';
import { frameWords } from '../words/frame.js';

export function Notice({ tone, children }: { tone: 'plain' | 'go' | 'caution' | 'stop'; children: ReactNode }) {
  return (
    <div className={`notice notice-${tone}`} role={tone === 'stop' ? 'alert' : 'status'}>
      {children}
    </div>
  );
}

function errorWords(error: unknown): string {
  if (error instanceof ProblemError) return frameWords.problem(error.problem);
  if (error instanceof OfflineError) return frameWords.unreachable;
  if (error instanceof AnswerError) return frameWords.badAnswer(error.message);
  return frameWords.unexpected;
}

/** What went wrong, where it went wrong, and how to try again. Fields that were refused are listed with what is accepted. */
export function Refusal({ error, onRetry }: { error: unknown; onRetry?: () => void }) {
  if (!error) return null;
  const fields = error instanceof ProblemError ? (error.problem.errors ?? []) : [];
  return (
    <Notice tone="stop">
      <div className="stack-tight">
        <p>{errorWords(error)}</p>
        {fields.length > 0 ? (
          <ul className="bullets">
            {fields.map((field) => (
              <li key={field.path + field.problem}>
                {field.problem}
                {field.accepted ? `. ${frameWords.accepted}: ${field.accepted}` : null}
              </li>
            ))}
          </ul>
        ) : null}
        {onRetry ? (
          <div>
            <Button variant="default" size="xs" onClick={onRetry}>
              {frameWords.again}
            </Button>
          </div>
        ) : null}
      </div>
    </Notice>
  );
}

/** Somebody else saved first. Both versions stay reachable: theirs is loaded, what was typed is kept until given up. */
export function Conflict({ onKeepMine, onTakeTheirs }: { onKeepMine: () => void; onTakeTheirs: () => void }) {
  return (
    <Notice tone="caution">
      <div className="stack-tight">
        <p>
          <strong>{frameWords.conflictTitle}</strong> {frameWords.conflictBody}
        </p>
        <div className="row">
          <Button size="sm" onClick={onKeepMine}>
            {frameWords.keepMine}
          </Button>
          <Button size="sm" variant="default" onClick={onTakeTheirs}>
            {frameWords.takeTheirs}
          </Button>
        </div>
      </div>
    </Notice>
  );
}

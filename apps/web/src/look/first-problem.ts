import { useEffect, useRef, type RefObject } from 'react';

/**
 * Moves the focus to the first field that is marked as wrong, once per attempt.
 *
 * @param attempt grows with every attempt to save; 0 before the first
 */
export function useFirstProblem(attempt: number, refused: boolean): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (attempt === 0 || !refused) return;
    form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [attempt, refused]);
  return form;
}

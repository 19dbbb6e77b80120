import type { LabPhase } from './path-schema.js';

/** Codes of steps that wait for each other in a circle, or null when the phase's steps can be ordered. */
export function cycleIn(phase: Pick<LabPhase, 'steps'>): string[] | null {
  const waiting = new Map(phase.steps.map((step) => [step.code, step]));
  for (let placed = true; placed;) {
    placed = false;
    for (const [code, step] of waiting) {
      if (step.after.some((before) => waiting.has(before.code))) continue;
      waiting.delete(code);
      placed = true;
    }
  }
  return waiting.size > 0 ? [...waiting.keys()] : null;
}

/** A step and everything in its phase that is made from it, directly or not. */
export function withSuccessors(
  steps: readonly { readonly code: string; readonly after: readonly { readonly code: string }[] }[],
  start: string,
): Set<string> {
  const reached = new Set([start]);
  for (let grown = true; grown;) {
    grown = false;
    for (const step of steps) {
      if (reached.has(step.code) || !step.after.some((before) => reached.has(before.code))) continue;
      reached.add(step.code);
      grown = true;
    }
  }
  return reached;
}

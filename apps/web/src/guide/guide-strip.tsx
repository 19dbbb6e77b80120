import type { Role } from '@archwright/contracts';
import { useRouterState } from '@tanstack/react-router';
import { useState } from 'react';
import { guideSteps, guideWords as words } from '../words/guide.js';
import { stepAt } from './guide-view.js';
import './guide.css';

const HIDDEN = 'archwright.guide.hidden';

/** Where the browser keeps nothing, the task comes back with the next visit. */
function isHidden(): boolean {
  try {
    return window.localStorage.getItem(HIDDEN) !== null;
  } catch {
    return false;
  }
}

function hide(): void {
  try {
    window.localStorage.setItem(HIDDEN, 'yes');
  } catch {
    // Kept nowhere: said above.
  }
}

/** The demonstration's first task for whoever is new to it, one line that goes along. */
export function GuideStrip({ role }: { role: Role }) {
  const pathname = useRouterState({ select: (state) => state.location.pathname });
  const [hidden, setHidden] = useState(isHidden);
  const [reached, setReached] = useState(0);
  const steps = guideSteps[role];
  const step = stepAt(steps, pathname, reached);
  if (step !== reached) setReached(step);
  if (hidden) return null;
  return (
    <aside className="guide no-print" aria-label={words.label}>
      <p>
        <strong>{words.step(step + 1, steps.length)}</strong> {steps[step]?.text}
      </p>
      <button
        type="button"
        className="plain-button"
        onClick={() => {
          hide();
          setHidden(true);
        }}
      >
        {words.hide}
      </button>
    </aside>
  );
}

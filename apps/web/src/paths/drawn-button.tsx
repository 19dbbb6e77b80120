import { useState, type KeyboardEvent, type ReactNode, type RefObject, type SVGProps } from 'react';
import { direction } from '../words/language.js';
import { keyOf, type PartRef } from './path-parts.js';

/** Which of many parts is reached by Tab, and how the arrows go on from it. */
export interface Roving {
  readonly reached: string;
  readonly move: (from: PartRef, by: number) => void;
  readonly take: (part: PartRef) => void;
}

/** One of many parts is reached by Tab, the others by the arrows: a drawing is one stop on the way down the page. */
export function useRoving(
  within: RefObject<HTMLElement | null>,
  parts: readonly PartRef[],
  start: PartRef | undefined,
): Roving {
  const keys = parts.map(keyOf);
  const [asked, setAsked] = useState<{ key: string; start: string } | null>(null);
  const startKey = start === undefined ? '' : keyOf(start);
  // Where somebody went by the arrows counts until another part is opened.
  const reached = asked !== null && asked.start === startKey && keys.includes(asked.key) ? asked.key : startKey;
  const take = (key: string): void => {
    setAsked({ key, start: startKey });
  };
  return {
    reached,
    take: (part) => {
      take(keyOf(part));
    },
    move: (from, by) => {
      const next = keys[Math.min(Math.max(keys.indexOf(keyOf(from)) + by, 0), keys.length - 1)];
      if (next === undefined) return;
      take(next);
      const target = within.current?.querySelector<SVGElement>(`[data-part="${next}"]`);
      target?.focus();
      target?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    },
  };
}

interface Props extends Omit<SVGProps<SVGGElement>, 'part'> {
  part: PartRef;
  label: string;
  isChosen: boolean;
  hasFault: boolean;
  roving?: Roving;
  onChoose?: (part: PartRef, goesThere: boolean) => void;
  children: ReactNode;
}

const FORWARD = direction === 'rtl' ? 'ArrowLeft' : 'ArrowRight';
const BACK = direction === 'rtl' ? 'ArrowRight' : 'ArrowLeft';
const STEPS: Readonly<Record<string, number>> = {
  [FORWARD]: 1,
  [BACK]: -1,
  ArrowDown: 1,
  ArrowUp: -1,
  Home: -Infinity,
  End: Infinity,
};

/** A part of a drawing that is opened by a click, a tap or Enter; without `onChoose` it is only drawn. */
export function DrawnButton({ part, label, isChosen, hasFault, roving, onChoose, children, ...rest }: Props) {
  const marks = { 'data-part': keyOf(part), 'data-chosen': isChosen, 'data-fault': hasFault };
  if (roving === undefined || onChoose === undefined) return <g {...rest}>{children}</g>;
  function onKeyDown(event: KeyboardEvent): void {
    const by = STEPS[event.key];
    const opens = event.key === 'Enter' || event.key === ' ';
    if (by === undefined && !opens) return;
    event.preventDefault();
    if (by === undefined) onChoose?.(part, true);
    else roving?.move(part, by);
  }
  return (
    <g
      {...rest}
      {...marks}
      role="button"
      aria-label={label}
      aria-pressed={isChosen}
      tabIndex={roving.reached === keyOf(part) ? 0 : -1}
      onKeyDown={onKeyDown}
      onFocus={() => {
        roving.take(part);
      }}
      onClick={() => {
        onChoose(part, false);
      }}
    >
      {children}
    </g>
  );
}

import { Button } from '@mantine/core';
import { useEffect, useRef, type ReactNode } from 'react';
import { editorWords as words } from '../words/path-editor.js';

interface Props {
  label: string;
  /** What each line is called on its buttons. */
  names: readonly string[];
  /** Draws a line by its place. */
  children: (index: number) => ReactNode;
  /** Left out where the order says nothing. */
  onMove?: (from: number, to: number) => void;
  onRemove: (index: number) => void;
  /** Adds a line; left out where none can be added. */
  add?: { label: string; onAdd: () => void };
  error?: string | undefined;
}

/** Lines of a part that are changed, put in order, added and taken out. The focus goes with a line that is moved. */
export function PartList({ label, names, children, onMove, onRemove, add, error }: Props) {
  const list = useRef<HTMLUListElement>(null);
  const follow = useRef<{ index: number; way: string } | null>(null);
  useEffect(() => {
    if (follow.current === null) return;
    const { index, way } = follow.current;
    follow.current = null;
    const line = list.current?.children[index];
    const button = (which: string) => line?.querySelector<HTMLElement>(`[data-way="${which}"]:not(:disabled)`);
    const field = line?.querySelector<HTMLElement>('input, select');
    (way === 'field' ? field : (button(way) ?? button(way === 'earlier' ? 'later' : 'earlier')))?.focus();
  });
  function move(from: number, to: number, way: string): void {
    follow.current = { index: to, way };
    onMove?.(from, to);
  }
  return (
    <div className="stack-tight">
      {error === undefined ? null : <p className="field-error">{error}</p>}
      {names.length === 0 ? null : (
        <ul ref={list} className="path-lines" aria-label={label}>
          {names.map((name, index) => (
            // By place: a line that moves would lose the focus with its element.
            <li key={index} className="stack-tight">
              {children(index)}
              <div className="row">
                {onMove === undefined ? null : (
                  <>
                    <Button
                      variant="default"
                      data-way="earlier"
                      aria-label={words.list.earlier(name)}
                      disabled={index === 0}
                      onClick={() => {
                        move(index, index - 1, 'earlier');
                      }}
                    >
                      <span aria-hidden="true">↑</span>
                    </Button>
                    <Button
                      variant="default"
                      data-way="later"
                      aria-label={words.list.later(name)}
                      disabled={index === names.length - 1}
                      onClick={() => {
                        move(index, index + 1, 'later');
                      }}
                    >
                      <span aria-hidden="true">↓</span>
                    </Button>
                  </>
                )}
                <Button
                  variant="subtle"
                  aria-label={words.list.remove(name)}
                  onClick={() => {
                    onRemove(index);
                  }}
                >
                  {words.takeOut.other}
                </Button>
              </div>
            </li>
          ))}
        </ul>
      )}
      {add === undefined ? null : (
        <div>
          <Button
            variant="default"
            onClick={() => {
              follow.current = { index: names.length, way: 'field' };
              add.onAdd();
            }}
          >
            {add.label}
          </Button>
        </div>
      )}
    </div>
  );
}

/** A list with one of its lines at another place. */
export function movedTo<Line>(lines: readonly Line[], from: number, to: number): Line[] {
  const [line, rest] = [lines.slice(from, from + 1), lines.filter((_, index) => index !== from)];
  return [...rest.slice(0, to), ...line, ...rest.slice(to)];
}

export const replacedAt = <Line,>(lines: readonly Line[], at: number, line: Line): Line[] =>
  lines.map((each, index) => (index === at ? line : each));

export const withoutAt = <Line,>(lines: readonly Line[], at: number): Line[] =>
  lines.filter((_, index) => index !== at);

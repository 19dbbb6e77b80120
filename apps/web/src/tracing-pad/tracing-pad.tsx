import { Button } from '@mantine/core';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { padWords as words } from '../words/tracing-pad.js';
import { Choice } from './choice.js';
import { evaluateDrawn, type DrawnPoint, type Phase, type Seen } from './drawn-tracing.js';
import { findingsInWords, saidOf } from './evaluation-view.js';
import { extentOf, type Extent } from './pad-frame.js';
import { Fit, Grid, PointMark } from './pad-marks.js';
import './tracing-pad.css';
import { usePad, type Tool } from './use-pad.js';

const PHASES: readonly Phase[] = ['right', 'left', 'protrusive', 'closure'];
const TOOLS: readonly Tool[] = ['draw', 'move', 'remove'];

/** The photograph, straightened, and the part of the plate that it shows. */
export interface Underlay {
  readonly url: string;
  readonly extent: Extent;
}

interface Props {
  /** Number of the attempt, from 1, in names that a screen reader says. */
  attempt: number;
  points: readonly DrawnPoint[];
  seen: Seen;
  underlay: Underlay | null;
  error: string | undefined;
  onChange: (points: readonly DrawnPoint[]) => void;
}

/** A millimetre grid to draw a tracing on, with its evaluation redrawn as the hand moves. */
export function TracingPad({ attempt, points, seen, underlay, error, onChange }: Props) {
  const [phase, setPhase] = useState<Phase>('right');
  const [tool, setTool] = useState<Tool>('draw');
  const help = useId();
  const extent = extentOf(points, underlay?.extent ?? null);
  const pad = usePad({ points, extent, phase, tool, onChange });
  // The hand goes first; the evaluation follows as fast as it can.
  const settled = useDeferredValue(pad.shown);
  const { stylusOn, view } = seen;
  const evaluated = useMemo(() => evaluateDrawn(settled, { stylusOn, view }), [settled, stylusOn, view]);
  const { left, right, bottom, top } = extent;
  const counts = PHASES.map((each) => pad.shown.filter((point) => point.phase === each).length);

  return (
    <div className="pad">
      <div className="stack-tight">
        <Choice
          label={words.phaseOf(attempt)}
          value={phase}
          onChange={setPhase}
          choices={PHASES.map((each, index) => ({ value: each, label: words.phase[each](counts[index] ?? 0) }))}
        />
        <div className="row">
          <Choice
            label={words.toolOf(attempt)}
            value={tool}
            onChange={setTool}
            choices={TOOLS.map((each) => ({ value: each, label: words.tool[each] }))}
          />
          <Button variant="default" disabled={!pad.canUndo} onClick={pad.undo}>
            {words.undo}
          </Button>
          <Button variant="subtle" onClick={pad.clear}>
            {words.clear[phase]}
          </Button>
        </div>
        {/* Keys and fingers act on the drawing itself: to a screen reader it is one field with its own keys. */}
        <div
          role="application"
          tabIndex={0}
          aria-label={words.padOf(attempt)}
          aria-describedby={help}
          className="pad-surface"
          onKeyDown={pad.keyed}
        >
          <svg
            viewBox={`${String(left)} ${String(-top)} ${String(right - left)} ${String(top - bottom)}`}
            onPointerDown={pad.press}
            onPointerMove={pad.drag}
            onPointerUp={pad.lift}
            onPointerCancel={pad.giveUp}
          >
            {underlay === null ? null : (
              <image
                href={underlay.url}
                x={underlay.extent.left}
                y={-underlay.extent.top}
                width={underlay.extent.right - underlay.extent.left}
                height={underlay.extent.top - underlay.extent.bottom}
                preserveAspectRatio="none"
              />
            )}
            <Grid {...extent} />
            {pad.shown.map((point, index) => (
              <PointMark key={`${String(index)} ${point.phase}`} {...point} />
            ))}
            {'evaluation' in evaluated ? <Fit evaluation={evaluated.evaluation} seen={seen} /> : null}
            <path
              className={pad.isCarrying ? 'pad-cursor pad-cursor-carrying' : 'pad-cursor'}
              d={`M${String(pad.cursor.x - 0.7)} ${String(-pad.cursor.y)}h0.5m0.4 0h0.5m-0.7 -0.7v0.5m0 0.4v0.5`}
            />
          </svg>
          <span className="pad-edge pad-edge-left">{words.edge(seen.view, 'left')}</span>
          <span className="pad-edge pad-edge-top">{words.forward}</span>
          <span className="pad-edge pad-edge-right">{words.edge(seen.view, 'right')}</span>
        </div>
        <p id={help} className="soft small">
          {words.help}
        </p>
        <p className="unseen" aria-live="polite">
          {words.cursor(pad.cursor.x, pad.cursor.y, pad.isCarrying)}
        </p>
      </div>
      <div className="stack-tight">
        <p className={error ? 'field-error' : 'strong'} role="status">
          {error ?? saidOf(evaluated)}
        </p>
        {'evaluation' in evaluated ? (
          <dl className="pairs">
            {findingsInWords(evaluated.evaluation).map(({ name, value }) => (
              <div key={name} className="pair">
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        ) : null}
        <p className="soft small">{words.judgement}</p>
      </div>
    </div>
  );
}

import { useState } from 'react';
import type { DrawnPoint, Seen } from './drawn-tracing.js';
import { PlatePicture } from './picture/plate-picture.js';
import { TracingPad, type Underlay } from './tracing-pad.js';

interface Props {
  attempt: number;
  points: readonly DrawnPoint[];
  seen: Seen;
  error: string | undefined;
  onChange: (points: readonly DrawnPoint[]) => void;
}

/** An attempt that is drawn: on the millimetre grid, or on a photograph of the plate that lies under it. */
export function DrawnAttempt({ attempt, points, seen, error, onChange }: Props) {
  const [underlay, setUnderlay] = useState<Underlay | null>(null);
  return (
    <>
      <PlatePicture
        seen={seen}
        onReady={(picture, found) => {
          setUnderlay(picture);
          if (found !== null) onChange(found);
        }}
      />
      <TracingPad attempt={attempt} points={points} seen={seen} underlay={underlay} error={error} onChange={onChange} />
    </>
  );
}

/// <reference lib="webworker" />
import { TracingError, type GrayPicture } from '@archwright/tracing';
import type { Seen } from '../drawn-tracing.js';
import { findLines, type Calibration, type FoundLines } from './calibration.js';

export interface Asked {
  readonly picture: GrayPicture;
  readonly calibration: Calibration;
  readonly seen: Seen;
}

export type Answered = FoundLines | { readonly problem: string };

function answerTo({ picture, calibration, seen }: Asked): Answered {
  try {
    return findLines(picture, calibration, seen);
  } catch (error) {
    if (error instanceof TracingError) return { problem: error.message };
    throw error;
  }
}

// Seconds of work for a photograph: on a thread of its own the screen stays alive.
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  self.postMessage(answerTo(data));
};

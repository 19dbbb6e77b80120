import { Button, Radio, TextInput } from '@mantine/core';
import { TracingError } from '@archwright/tracing';
import { useEffect, useRef, useState } from 'react';
import { padWords } from '../../words/tracing-pad.js';
import type { DrawnPoint, Seen } from '../drawn-tracing.js';
import type { Underlay } from '../tracing-pad.js';
import { askWorker } from './ask-worker.js';
import { extentToShow, uprightFrame, type Calibration, type FoundLines } from './calibration.js';
import { firstCalibration, readCalibration, type CalibrationDraft } from './calibration-draft.js';
import { loadPicture, PictureError, toGray, type LoadedPicture } from './load-picture.js';
import { MarkedPicture } from './marks.js';
import { straighten } from './straighten.js';

const words = padWords.picture;
const LENGTHS = { length: ['lengthMm'], rectangle: ['widthMm', 'heightMm'] } as const;

interface Props {
  seen: Seen;
  /** The straightened picture to draw on, and the points that were found on it; null to draw by hand. */
  onReady: (underlay: Underlay, points: readonly DrawnPoint[] | null) => void;
}

/** A photograph of the plate: chosen, given its scale by marks, read for lines. It never leaves the browser. */
export function PlatePicture({ seen, onReady }: Props) {
  const [picture, setPicture] = useState<LoadedPicture | null>(null);
  const [typed, setTyped] = useState<CalibrationDraft | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [isReading, setIsReading] = useState(false);
  const reading = useRef<AbortController | null>(null);
  useEffect(() => () => reading.current?.abort(), []);
  useEffect(
    () => () => {
      if (picture !== null) URL.revokeObjectURL(picture.url);
    },
    [picture],
  );

  async function choose(file: File | null): Promise<void> {
    reading.current?.abort();
    setSaid(null);
    try {
      const loaded = file === null ? null : await loadPicture(file);
      setPicture(loaded);
      setTyped(loaded === null ? null : firstCalibration(loaded));
    } catch (error) {
      if (!(error instanceof PictureError)) throw error;
      setPicture(null);
      setSaid(error.message);
    }
  }

  function show(calibration: Calibration, shown: LoadedPicture, found: FoundLines | null): void {
    const frame = found?.frame ?? uprightFrame(calibration);
    const extent = extentToShow(found?.points ?? [], calibration, frame);
    onReady({ url: straighten(shown, calibration, frame, extent), extent }, found?.points ?? null);
  }

  async function find(calibration: Calibration, shown: LoadedPicture): Promise<void> {
    const asked = new AbortController();
    reading.current = asked;
    setIsReading(true);
    setSaid(words.finding);
    try {
      const answered = await askWorker({ picture: toGray(shown), calibration, seen }, asked.signal);
      if ('problem' in answered) setSaid(answered.problem);
      else {
        show(calibration, shown, answered);
        setSaid(words.found(answered.points.length));
      }
    } catch (error) {
      // Another picture was chosen, or this screen was left.
      if (!asked.signal.aborted) throw error;
    } finally {
      setIsReading(false);
    }
  }

  /** Does something with the scale, or says what is wrong with it. */
  function withScale(work: (calibration: Calibration, shown: LoadedPicture) => void): void {
    const calibration = typed === null ? null : readCalibration(typed);
    if (picture === null) return;
    if (calibration === null) {
      setSaid(words.numbers);
      return;
    }
    try {
      work(calibration, picture);
    } catch (error) {
      if (!(error instanceof TracingError)) throw error;
      setSaid(error.message);
    }
  }

  return (
    <details className="details">
      <summary>{words.open}</summary>
      <div className="stack-tight">
        <label className="plate-file">
          <span className="soft">{words.choose}</span>
          <input
            type="file"
            accept="image/png,image/jpeg"
            onChange={(event) => void choose(event.currentTarget.files?.[0] ?? null)}
          />
        </label>
        <p className="soft small">{words.stays}</p>
        {picture === null || typed === null ? null : (
          <>
            <Radio.Group
              label={words.scale}
              value={typed.kind}
              onChange={(kind) => {
                setTyped({ ...typed, kind: kind === 'rectangle' ? 'rectangle' : 'length' });
              }}
            >
              <div className="row">
                <Radio className="check-line" value="length" label={words.byLength} />
                <Radio className="check-line" value="rectangle" label={words.byRectangle} />
              </div>
            </Radio.Group>
            <div className="capture-boxes">
              {LENGTHS[typed.kind].map((name) => (
                <TextInput
                  key={name}
                  label={words[name]}
                  inputMode="decimal"
                  value={typed[name]}
                  onChange={(event) => {
                    setTyped({ ...typed, [name]: event.currentTarget.value });
                  }}
                />
              ))}
            </div>
            <p className="soft small">{words.marksHelp}</p>
            <MarkedPicture
              picture={picture}
              marks={typed.kind === 'length' ? typed.marks.slice(0, 2) : typed.marks}
              onMove={(at, place) => {
                const [one, two, three, four] = typed.marks.map((mark, index) => (index === at ? place : mark));
                if (one && two && three && four) setTyped({ ...typed, marks: [one, two, three, four] });
              }}
            />
            <div className="row">
              <Button
                variant="default"
                loading={isReading}
                onClick={() => {
                  withScale((calibration, shown) => void find(calibration, shown));
                }}
              >
                {words.find}
              </Button>
              <Button
                variant="subtle"
                onClick={() => {
                  withScale((calibration, shown) => {
                    show(calibration, shown, null);
                  });
                }}
              >
                {words.byHand}
              </Button>
            </div>
          </>
        )}
        <p role="status">{said}</p>
      </div>
    </details>
  );
}

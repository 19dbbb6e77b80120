import { Button } from '@mantine/core';
import { Tag } from '../look/marks.js';
import { stageWords as words } from '../words/chair.js';
import { TONE, type Findings } from './finding-view.js';

interface Props {
  live: Findings | null;
  pending: boolean;
  onDiscard: () => void;
}

/** Stays in sight while values are typed: the most serious thing the checks would say, and the button to save. */
export function LiveBar({ live, pending, onDiscard }: Props) {
  const worst = live?.findings.find(({ verdict }) => verdict !== 'pass');
  return (
    <div className="stage-save no-print">
      <div className="stage-save-words" aria-live="polite">
        {live === null ? (
          <p className="soft">{words.nothingNew}</p>
        ) : worst ? (
          <p>
            <Tag tone={TONE[worst.verdict]}>{words.verdict[worst.verdict]}</Tag> {worst.reason}
          </p>
        ) : (
          <p className="soft">{words.noFindings}</p>
        )}
      </div>
      {live === null ? null : (
        <Button variant="subtle" onClick={onDiscard}>
          {words.discard}
        </Button>
      )}
      <Button type="submit" size="md" loading={pending} disabled={live === null}>
        {words.save}
      </Button>
    </div>
  );
}

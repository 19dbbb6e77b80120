import { Button } from '@mantine/core';
import { useState } from 'react';
import { Notice } from '../look/notice.js';
import { frameWords } from '../words/frame.js';
import { useOthersChanges } from './others-changes.js';

interface Props {
  kind: string;
  id: string;
  /** Who did what last, in words; null when it is not known. */
  latest: string | null;
}

/** Says that somebody else changed what is being looked at, until it has been seen. */
export function ChangedMeanwhile({ kind, id, latest }: Props) {
  const changes = useOthersChanges(kind, id);
  const [seen, setSeen] = useState(changes);
  if (changes === seen) return null;
  return (
    <Notice tone="plain">
      <div className="row">
        <span>
          {frameWords.changedMeanwhile} {latest}
        </span>
        <Button
          variant="subtle"
          size="compact-sm"
          onClick={() => {
            setSeen(changes);
          }}
        >
          {frameWords.seen}
        </Button>
      </div>
    </Notice>
  );
}

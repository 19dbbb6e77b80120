import { Button } from '@mantine/core';
import type { SetupView } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { Notice } from '../look/notice.js';
import { editorWords } from '../words/path-editor.js';
import { pathWords as words } from '../words/paths.js';
import type { DraftFault } from './path-draft.js';
import { keyOf, partName, type PartRef } from './path-parts.js';
import { meansOf, missingMeans } from './paths-view.js';

interface Props {
  path: TreatmentPath;
  faults: readonly DraftFault[];
  /** Undefined until it is fetched. */
  setup: SetupView | undefined;
  onChoose: (part: PartRef) => void;
}

/** What must be mended before a path can be published, each the way there, and what the practice lacks to follow it. */
export function PathFaults({ path, faults, setup, onChoose }: Props) {
  const missing = setup === undefined ? [] : missingMeans(path, meansOf(setup));
  return (
    <div className="stack-tight roomy">
      <Notice tone={faults.length > 0 ? 'caution' : 'go'}>
        <p>{words.faults(faults.length)}</p>
        {faults.length === 0 ? null : (
          <ul className="path-links">
            {faults.map(({ part, field, words: said }) => (
              <li key={`${keyOf(part)} ${field} ${said}`}>
                <Button
                  variant="subtle"
                  onClick={() => {
                    onChoose(part);
                  }}
                >
                  {editorWords.faultAt(partName(path, part), said)}
                </Button>
              </li>
            ))}
          </ul>
        )}
      </Notice>
      {missing.length > 0 ? (
        <Notice tone="caution">
          <p>{words.meansTitle}</p>
          <ul className="bullets">
            {missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </div>
  );
}

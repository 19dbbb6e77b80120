import type { SetupView } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { Notice } from '../look/notice.js';
import { pathWords as words } from '../words/paths.js';
import type { ReadPath } from './path-draft.js';
import { meansOf, missingMeans } from './paths-view.js';

interface Props extends ReadPath {
  path: TreatmentPath | null;
  /** Undefined until it is fetched. */
  setup: SetupView | undefined;
}

/** What must be mended before a path can be published, and what the practice lacks to follow it. */
export function PathFaults({ path, faults, notJson, setup }: Props) {
  const missing = path === null || setup === undefined ? [] : missingMeans(path, meansOf(setup));
  return (
    <div className="stack-tight">
      {notJson === null ? (
        <Notice tone={faults.length > 0 ? 'caution' : 'go'}>
          <p>{words.faults(faults.length)}</p>
          <ul className="bullets">
            {faults.map(({ part, message }) => (
              <li key={`${part} ${message}`}>
                {part}: {message}
              </li>
            ))}
          </ul>
        </Notice>
      ) : null}
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

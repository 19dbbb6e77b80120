import { Notice } from '../look/notice.js';
import { screeningWords as words } from '../words/screening.js';
import { useFindingsAt } from './use-findings.js';

/** What stands out among this visit's values; nothing when nothing does. */
export function StageFindings({ stageId }: { stageId: string }) {
  const items = useFindingsAt(stageId).data?.items ?? [];
  if (items.length === 0) return null;
  return (
    <Notice tone="plain">
      <div className="stack-none">
        <p className="strong">{words.atStage}</p>
        {items.map(({ id, sentence }) => (
          <p key={id}>{sentence}</p>
        ))}
        <p className="small soft">{words.note}</p>
      </div>
    </Notice>
  );
}

import { labCasePage, type LabCasePage } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { Refusal } from '../look/notice.js';
import { Empty, ScreenHead, Waiting } from '../look/screen.js';
import { shortDate } from '../time/wording.js';
import { labFindWords as words } from '../words/bench.js';
import { caseWords } from '../words/case.js';
import { CaseLink } from './case-link.js';

/** Cases of the laboratory by their number; it finds nobody by name. */
export function LabFindPage() {
  const { q = '' } = useSearch({ from: '/inside/bench/find' });
  const { today } = useSuspenseQuery(practiceQuery).data;
  const found = useQuery({
    queryKey: ['lab-cases', q],
    queryFn: (): Promise<LabCasePage> => read('/cases', labCasePage, { q }),
    enabled: q !== '',
  });
  const items = q === '' ? [] : (found.data?.items ?? []);
  return (
    <>
      <ScreenHead title={words.title} sentence={q ? words.results(q) : words.start} />
      <Refusal error={found.error} onRetry={() => void found.refetch()} />
      <Waiting busy={found.isPlaceholderData}>
        <div className="column" aria-live="polite">
          {items.length > 0 ? (
            <ul className="sheet lines">
              {items.map((item) => (
                <li key={item.id} className="line">
                  <CaseLink caseId={item.id} number={item.number} /> {item.title}
                  <span className="soft">
                    {' · '}
                    {caseWords.states[item.state]}
                    {item.deliveryOn ? <> · {words.placement(shortDate(item.deliveryOn, today))}</> : null}
                  </span>
                </li>
              ))}
            </ul>
          ) : null}
          {q !== '' && found.isSuccess && items.length === 0 ? <Empty>{words.nothing(q)}</Empty> : null}
        </div>
      </Waiting>
    </>
  );
}

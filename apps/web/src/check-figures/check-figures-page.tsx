import { checkFigures, type CheckFigures } from '@archwright/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { NotYet } from '../look/not-yet.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { checkFigureWords as words } from '../words/practice-lists.js';
import { figureRows, rulesSetAside } from './check-figures-view.js';

/** How often each rule failed, and what people made of it. */
export function CheckFiguresPage() {
  const known = useQuery({
    queryKey: ['check-figures'],
    queryFn: (): Promise<CheckFigures> => read('/check-figures', checkFigures),
  });
  if (!known.data) {
    return <NotYet asked={known} what={words.loading} />;
  }
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence(rulesSetAside(known.data))} />
      <div className="stack">
        <PracticePlaces />
        <p className="soft">{words.perRule}</p>
        <PlainTable label={words.title} columns={Object.values(words.columns)} rows={figureRows(known.data)} />
        <p className="soft">{known.data.note}</p>
      </div>
    </>
  );
}

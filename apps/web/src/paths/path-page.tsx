import { Button, NativeSelect } from '@mantine/core';
import { Link, useNavigate, useParams, useSearch } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { pathWords as words } from '../words/paths.js';
import { DifferenceTable } from './difference-table.js';
import { PathDrawing } from './path-drawing.js';
import './paths.css';
import { orderRows } from './paths-view.js';
import { usePath } from './use-paths.js';

/** One version of a path: as a picture, as a table, and beside another version. */
export function PathPage() {
  const { versionId } = useParams({ from: '/inside/practice/paths/$versionId' });
  const { with: otherId } = useSearch({ from: '/inside/practice/paths/$versionId' });
  const navigate = useNavigate();
  const { paths, path, other, withdraw } = usePath(versionId, otherId);
  if (!path.data) {
    return <NotYet asked={path} what={words.loading} />;
  }
  const { document, title, code, version, isWithdrawn } = path.data;
  const others = (paths.data?.items ?? []).filter(({ id }) => id !== versionId);
  return (
    <>
      <ScreenHead title={title} sentence={words.headWith(code, version, document.summary)}>
        {isWithdrawn ? <Tag>{words.withdrawn}</Tag> : null}
        <Link to="/practice/paths/$versionId/edit" params={{ versionId }}>
          {words.edit}
        </Link>
        <Link to="/practice/paths">{words.back}</Link>
      </ScreenHead>
      <div className="stack">
        <section className="stack-tight" aria-labelledby="picture">
          <h2 id="picture">{words.picture}</h2>
          <PathDrawing path={document} />
        </section>
        <section className="stack-tight" aria-labelledby="order">
          <h2 id="order">{words.order}</h2>
          <PlainTable
            label={words.order}
            columns={Object.values(words.orderColumns)}
            rows={orderRows(document).map(({ id, part, cells }) => ({ id, head: part, cells }))}
          />
        </section>
        <section className="stack-tight" aria-label={words.compare}>
          <div className="row">
            <NativeSelect
              label={words.compare}
              data={[
                { value: '', label: words.noCompare },
                ...others.map((each) => ({ value: each.id, label: words.head(each.code, each.version) })),
              ]}
              value={otherId ?? ''}
              onChange={(event) =>
                void navigate({
                  to: '/practice/paths/$versionId',
                  params: { versionId },
                  search: { with: event.currentTarget.value || undefined },
                })
              }
            />
          </div>
          <Refusal error={other.error} />
          {other.data ? <DifferenceTable before={other.data.document} after={document} /> : null}
        </section>
        <Refusal error={withdraw.error} />
        <div>
          <Button
            variant="default"
            loading={withdraw.isPending}
            onClick={() => {
              withdraw.mutate(!isWithdrawn);
            }}
          >
            {isWithdrawn ? words.offerAgain : words.withdraw}
          </Button>
        </div>
      </div>
    </>
  );
}

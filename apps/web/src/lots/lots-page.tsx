import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { Refusal } from '../look/notice.js';
import { Phone } from '../look/phone.js';
import { PlainTable } from '../look/plain-table.js';
import { Empty, ScreenHead, Waiting } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { practiceZone } from '../time/practice-zone.js';
import { lotWords as words } from '../words/lots.js';
import { LotForm } from './lot-form.js';
import { casesOf, lotRows, type LotRow } from './lots-view.js';
import { useLots } from './use-lots.js';

/** Every case that a lot of material went into, with whom to call when its maker takes it back. */
export function LotsPage() {
  const { lot = '', material = '' } = useSearch({ from: '/inside/practice/lots' });
  const navigate = useNavigate();
  const { practice, found } = useLots(lot, material);
  const rows = lot === '' ? [] : lotRows(found.data?.items ?? [], practiceZone(practice), practice.today);
  return (
    <>
      <ScreenHead
        title={words.title}
        sentence={lot !== '' && found.data ? words.found(lot, casesOf(rows)) : words.start}
      />
      <div className="stack">
        <PracticePlaces />
        <LotForm
          lot={lot}
          material={material}
          onFind={(typedLot, typedMaterial) =>
            void navigate({
              to: '/practice/lots',
              search: { lot: typedLot, ...(typedMaterial ? { material: typedMaterial } : {}) },
            })
          }
        />
        <Refusal error={found.error} onRetry={() => void found.refetch()} />
        <Waiting busy={found.isPlaceholderData}>
          {rows.length > 0 ? <LotTable rows={rows} /> : null}
          {lot !== '' && found.data && rows.length === 0 ? <Empty>{words.none}</Empty> : null}
        </Waiting>
        {lot !== '' && found.data?.next ? <p className="small soft">{words.first(rows.length)}</p> : null}
      </div>
    </>
  );
}

function LotTable({ rows }: { rows: readonly LotRow[] }) {
  return (
    <PlainTable
      label={words.title}
      columns={Object.values(words.columns)}
      rows={rows.map((row) => ({
        id: row.id,
        head: row.patientName,
        cells: [
          <Phone number={row.phone} />,
          <>
            <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }}>
              {row.caseNumber}
            </Link>{' '}
            <span className="small soft">{row.caseState}</span>
          </>,
          row.what,
          <span className="nowrap">{row.expires}</span>,
          row.recorded,
        ],
      }))}
    />
  );
}

import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { Refusal } from '../look/notice.js';
import { Phone } from '../look/phone.js';
import { Empty, ScreenHead, Waiting } from '../look/screen.js';
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
  const columns = words.columns;
  return (
    <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.title}>
      <table className="table">
        <thead>
          <tr>
            {Object.values(columns).map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.patientName}</th>
              <td>
                <Phone number={row.phone} />
              </td>
              <td>
                <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }}>
                  {row.caseNumber}
                </Link>{' '}
                <span className="small soft">{row.caseState}</span>
              </td>
              <td>{row.what}</td>
              <td className="nowrap">{row.expires}</td>
              <td>{row.recorded}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

import type { MaterialLotView } from '@archwright/contracts';
import { PlainTable } from '../look/plain-table.js';
import { lotWords } from '../words/lots.js';
import { lotRows } from './lots-view.js';

const { used: words } = lotWords;

interface Props {
  lots: readonly MaterialLotView[];
  /** By whose clock they were recorded. */
  zone: string;
  today: string;
}

/** Materials that went into a case or a job, with their lots. */
export function CaseLots({ lots, zone, today }: Props) {
  return (
    <PlainTable
      label={words.title}
      columns={Object.values(words.columns)}
      rows={lotRows(lots, zone, today).map((row) => ({
        id: row.id,
        head: row.what,
        cells: [row.lot, <span className="nowrap">{row.expires}</span>, row.recorded],
      }))}
    />
  );
}

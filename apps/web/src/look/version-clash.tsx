import { ClashSheet, type ClashRow } from './clash-sheet.js';
import { Conflict } from './notice.js';

interface Props {
  rows: readonly ClashRow[];
  onKeepMine: () => void;
  onTakeTheirs: () => void;
}

/** Somebody else saved first: both versions where they differ, or that they came to the same. */
export function VersionClash(clash: Props) {
  return clash.rows.length > 0 ? <ClashSheet {...clash} /> : <Conflict {...clash} />;
}

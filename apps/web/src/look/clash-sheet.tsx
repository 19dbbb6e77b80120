import { Button } from '@mantine/core';
import { frameWords } from '../words/frame.js';
import { Notice } from './notice.js';

/** A field that two people changed at once, in words. */
export interface ClashRow {
  key: string;
  label: string;
  mine: string;
  theirs: string;
}

interface Props {
  rows: readonly ClashRow[];
  onKeepMine: () => void;
  onTakeTheirs: () => void;
}

/** Both versions of what two people wrote at once, side by side, and the choice between them. */
export function ClashSheet({ rows, onKeepMine, onTakeTheirs }: Props) {
  if (rows.length === 0) return null;
  return (
    <Notice tone="caution">
      <div className="stack-tight">
        <p>
          <strong>{frameWords.conflictTitle}</strong> {frameWords.clashBody}
        </p>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{frameWords.clashField}</th>
              <th scope="col">{frameWords.clashMine}</th>
              <th scope="col">{frameWords.clashTheirs}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td className="sample-text">{row.mine || frameWords.clashEmpty}</td>
                <td className="sample-text">{row.theirs || frameWords.clashEmpty}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <div className="row">
          <Button size="sm" onClick={onKeepMine}>
            {frameWords.clashKeepMine}
          </Button>
          <Button size="sm" variant="default" onClick={onTakeTheirs}>
            {frameWords.clashTakeTheirs}
          </Button>
        </div>
      </div>
    </Notice>
  );
}

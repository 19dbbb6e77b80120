import { deskWords } from '../words/desk.js';

/** A telephone number to press, or the word that there is none. */
export function Phone({ number }: { number: string | null }) {
  if (!number) return <span className="soft">{deskWords.noPhone}</span>;
  return (
    <a href={`tel:${number.replace(/[^+0-9]/g, '')}`} className="nowrap">
      {number}
    </a>
  );
}

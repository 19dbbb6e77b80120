import type { VerdictHistory } from '@archwright/contracts';
import { lineWords } from '../words/line.js';
import { spelled } from '../words/plural.js';

type Said = VerdictHistory['items'][number];

/** One thing that was judged more than once and not always alike, the latest verdict first. */
interface Change {
  subject: string;
  verdicts: Said[];
}

/** What changed: a repeated verdict of the same kind for the same reason is told once. */
export function changesOf(items: readonly Said[]): Change[] {
  const subjects = new Map<string, Said[]>();
  for (const item of items) {
    const name = subjectOf(item);
    const own = subjects.get(name) ?? [];
    const newer = own.at(-1);
    if (newer === undefined || newer.verdict !== item.verdict || newer.reason !== item.reason) own.push(item);
    subjects.set(name, own);
  }
  return [...subjects].filter(([, own]) => own.length > 1).map(([subject, verdicts]) => ({ subject, verdicts }));
}

const subjectOf = ({ rule, about, arch }: Said): string =>
  [about.length > 0 ? about.map(spelled).join(', ') : spelled(rule), arch ? lineWords.arch[arch] : '']
    .filter(Boolean)
    .join(' · ');

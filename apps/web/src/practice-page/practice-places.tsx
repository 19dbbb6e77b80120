import { Link } from '@tanstack/react-router';
import { auditWords } from '../words/audit.js';
import { figureWords } from '../words/figures.js';
import { importWords } from '../words/import.js';
import { lotWords } from '../words/lots.js';
import { messageTextWords } from '../words/message-texts.js';
import { pathWords } from '../words/paths.js';
import { checkFigureWords, toothListWords } from '../words/practice-lists.js';
import { practiceWords as words } from '../words/practice.js';
import { rangeWords } from '../words/ranges.js';
import { ruleWords } from '../words/rules.js';
import { setupWords } from '../words/setup.js';
import { userWords } from '../words/users.js';

const PLACES = [
  ['/practice', words.today],
  ['/practice/figures', figureWords.link],
  ['/practice/setup', setupWords.link],
  ['/practice/paths', pathWords.link],
  ['/practice/ranges', rangeWords.link],
  ['/practice/checks', checkFigureWords.link],
  ['/practice/teeth', toothListWords.link],
  ['/practice/rules', ruleWords.link],
  ['/practice/messages', messageTextWords.link],
  ['/practice/users', userWords.link],
  ['/practice/import', importWords.link],
  ['/practice/audit', auditWords.link],
  ['/practice/lots', lotWords.link],
] as const;

/** The screens of this workplace, on top of each. */
export function PracticePlaces() {
  return (
    <nav className="sub-places no-print" aria-label={words.places}>
      {PLACES.map(([to, label]) => (
        <Link key={to} to={to} activeOptions={{ exact: true, includeSearch: false }}>
          {label}
        </Link>
      ))}
    </nav>
  );
}

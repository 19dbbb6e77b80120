import type { PracticeView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { Notice } from '../look/notice.js';
import { shortDate } from '../time/wording.js';
import { freedWords as words } from '../words/freed-time.js';
import { askedTime, type FreedSearch } from './freed-time-view.js';

/** After a visit went elsewhere: the time that it left, and the way to whoever gains by it. */
export function FreedNotice({ practice, search }: { practice: PracticeView; search: FreedSearch }) {
  const { on = '', starts = '', ends = '' } = search;
  if (askedTime(practice, search).query === null) return null;
  return (
    <Notice tone="plain">
      {words.freed(words.timeOf(shortDate(on, practice.today), starts, ends))}{' '}
      <Link to="/desk/freed-time" search={search}>
        {words.see}
      </Link>
    </Notice>
  );
}

import { Link } from '@tanstack/react-router';
import { Notice } from '../look/notice.js';
import { patientWords as words } from '../words/desk.js';
import type { Likeness } from './likely-same.js';

/** Those who may be the person that is being entered a second time. */
export function LikelyList({ likely }: { likely: readonly Likeness[] }) {
  const isSame = likely.some((each) => each.isSame);
  return (
    <div aria-live="polite">
      {likely.length === 0 ? null : (
        <Notice tone={isSame ? 'caution' : 'plain'}>
          <div className="stack-tight">
            <p>{isSame ? words.sameKnown : words.likelyKnown}</p>
            <ul className="bullets">
              {likely.map(({ id, label }) => (
                <li key={id}>
                  <Link to="/desk/patients/$patientId" params={{ patientId: id }}>
                    {label}
                  </Link>
                </li>
              ))}
            </ul>
          </div>
        </Notice>
      )}
    </div>
  );
}

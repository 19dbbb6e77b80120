import type { CaughtMail } from '@archwright/contracts';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait, ScreenHead } from '../look/screen.js';
import { caughtMailWords as words } from '../words/frame.js';
import './caught-mail.css';
import { useCaughtMail } from './use-caught-mail.js';

function Mail({ mail }: { mail: CaughtMail }) {
  return (
    <li className="line">
      <details className="details">
        <summary>
          {mail.subject} <span className="soft">{words.to(mail.to)}</span>
        </summary>
        <div className="stack-tight">
          <p className="mail-text">{mail.text.trim()}</p>
          {mail.calendar === null ? null : (
            <details className="details">
              <summary>{words.calendar}</summary>
              <p className="mail-text small soft">{mail.calendar.trim()}</p>
            </details>
          )}
        </div>
      </details>
    </li>
  );
}

/** What the demonstration would have sent. */
export function CaughtMailPage() {
  const caught = useCaughtMail();
  const items = caught.data?.items ?? [];
  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <div className="stack column">
        <Refusal error={caught.error} onRetry={() => void caught.refetch()} />
        {caught.isPending ? <FirstWait what={words.loading} /> : null}
        {caught.data && items.length === 0 ? (
          <div className="sheet">
            <Empty>{words.none}</Empty>
          </div>
        ) : null}
        {items.length > 0 ? (
          <ul className="sheet lines">
            {items.map((mail) => (
              <Mail key={`${mail.messageId} ${mail.receivedAt}`} mail={mail} />
            ))}
          </ul>
        ) : null}
      </div>
    </>
  );
}

import type { ReplyPurpose, ReplyView } from '@archwright/casework';
import { replyWordsOf } from './reply-words.js';

/** The page runs no script and loads nothing; its button may post to this service only. */
export const REPLY_PAGE_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

const STYLE =
  'body{font:1.25rem/1.5 system-ui,sans-serif;max-width:34rem;margin:3rem auto;padding:0 1rem;color:#1b1b1b;background:#fff}' +
  'button{font:inherit;padding:.75rem 1.5rem;cursor:pointer}';

/** What the patient sees on following a link: the visit, and a button that does what the link is for. */
export function replyPage(view: ReplyView | null, purpose: ReplyPurpose): string {
  const words = replyWordsOf(view?.locale ?? 'en');
  if (view?.stands !== true) return page(words, `<p>${escaped(words.gone)}</p>`);
  const label = purpose === 'confirm' ? words.confirm : words.askToMove;
  const button = `<form method="post"><button type="submit">${escaped(label)}</button></form>`;
  return page(words, visitIn(view) + (purpose === 'instructions' ? '' : button));
}

/** What the patient sees after pressing the button. */
export function repliedPage(view: ReplyView | null, purpose: ReplyPurpose): string {
  const words = replyWordsOf(view?.locale ?? 'en');
  if (view?.stands !== true) return page(words, `<p>${escaped(words.gone)}</p>`);
  return page(words, `${visitIn(view)}<p>${escaped(purpose === 'confirm' ? words.confirmed : words.asked)}</p>`);
}

type Words = ReturnType<typeof replyWordsOf>;

function page({ intlLocale, direction, title }: Words, body: string): string {
  return (
    `<!doctype html><html lang="${intlLocale}" dir="${direction}"><head><meta charset="utf-8">` +
    '<meta name="viewport" content="width=device-width"><meta name="robots" content="noindex">' +
    `<title>${escaped(title)}</title><style>${STYLE}</style></head><body><main><h1>${escaped(title)}</h1>${body}</main></body></html>`
  );
}

function visitIn({ locale, startsAt, zone, clinicName, address }: ReplyView): string {
  const when = new Intl.DateTimeFormat(replyWordsOf(locale).intlLocale, {
    dateStyle: 'full',
    timeStyle: 'short',
    timeZone: zone,
  }).format(startsAt);
  return `<p>${escaped(when)}</p><p>${escaped(clinicName)}<br>${escaped(address)}</p>`;
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);

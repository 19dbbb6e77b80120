import { messages as english } from './en/dates.js';
import { inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/dates.js'), ar: () => import('./ar/dates.js') });

/** What fields for dates accept, and the controls of their calendar. */
export const dateWords = said.dates;

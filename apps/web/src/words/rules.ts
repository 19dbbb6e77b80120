import { messages as english } from './en/rules.js';
import { inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/rules.js'), ar: () => import('./ar/rules.js') });

/** Words of the screen on which a practice sets reminders, holds and recalls. */
export const ruleWords = said.rules;

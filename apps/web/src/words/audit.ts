import { messages as english } from './en/audit.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/audit.js'), ar: () => import('./ar/audit.js') });

/** Words of the screen on which the audit trail is searched. */
export const auditWords = {
  ...said.audit,
  sentence: filled(said.audit.sentence, (shown: number, isAll: boolean) => ({ shown, isAll: isAll ? 'yes' : 'no' })),
  about: filled(said.audit.about, (name: string, kind: string) => ({ name, kind })),
};

import { messages as english } from './en/users.js';
import { frameWords } from './frame.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/users.js'), ar: () => import('./ar/users.js') });

/** Words of the screens on which people get their accounts. */
export const userWords = {
  ...said.users,
  sentence: filled(said.users.sentence, (active: number, ended: number) => ({ active, ended })),
  account: filled(said.users.account, (signInName: string, role: string) => ({ signInName, role })),
  roles: frameWords.roles,
  given: filled(said.users.given, (signInName: string, password: string) => ({ signInName, password })),
};

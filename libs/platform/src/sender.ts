import { ConfigurationError } from './configuration.js';

/** Reads `Appointments <appointments@dentures.example>`, or a bare address. */
export function senderOf(mailFrom: string): { name: string; mail: string } {
  const [, name = '', bracketed] = /^\s*"?([^"<>]*?)"?\s*<([^\s<>]+@[^\s<>]+)>\s*$/.exec(mailFrom) ?? [];
  if (bracketed !== undefined) return { name: name === '' ? bracketed : name, mail: bracketed };
  if (/^[^\s<>]+@[^\s<>]+$/.test(mailFrom)) return { name: mailFrom, mail: mailFrom };
  throw new ConfigurationError([
    { variable: 'MAIL_FROM', problem: 'is no sender', accepted: '"Appointments <appointments@dentures.example>"' },
  ]);
}

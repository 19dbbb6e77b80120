/**
 * The Message-ID of every attempt to send one reminder or notice, so that a receiver can drop a copy (RFC 5322, 3.6.4).
 *
 * @param id of the reminder or notice row
 * @param domain of the practice's mail
 */
export function messageIdOf(id: string, domain: string): string {
  return `<${id}@${domain}>`;
}

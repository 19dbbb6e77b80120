/**
 * Right-hand side of message ids. Ids are written together with the booking, before any mail server is known, so the
 * organisation itself makes them unique; `.invalid` can never be somebody's domain (RFC 2606, section 2).
 */
export function messageDomainOf(organisationId: string): string {
  return `${organisationId}.invalid`;
}

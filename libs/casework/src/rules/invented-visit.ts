/** Invented facts for samples of messages; nobody's. */
export const SOMEBODY = { givenName: 'Alma', zone: 'Europe/London' };
export const SOME_VISIT = {
  startMs: Date.UTC(2027, 0, 28, 9, 20),
  zone: 'Europe/London',
  address: '1 Example Quay, Exampleton',
};
export const SOME_WAYS = {
  confirmUrl: 'https://practice.example/replies/confirm',
  askToMoveUrl: 'https://practice.example/replies/move',
  detailsUrl: 'https://practice.example/replies/details',
  phone: '+44 20 7946 0100',
};
export const EARLIER_START = Date.UTC(2027, 0, 26, 14, 0);

import { AuditEntry, inOrganisation, listOrganisations } from '@archwright/records';
import { openDemoApi, type DemoApi } from './practice/demo-api.js';

let api: DemoApi;
beforeAll(async () => {
  api = await openDemoApi();
}, 60_000);
afterAll(() => api.close());

describe('the id of a request', () => {
  it('stands in the audit entries of what the request did, and in its answer', async () => {
    const cookie = await api.signIn('desk');
    const answers = await Promise.all(
      ['One', 'Other'].map((familyName) =>
        fetch(`${api.url}/patients`, {
          method: 'POST',
          headers: { cookie, 'content-type': 'application/json', 'idempotency-key': `trace-of-${familyName}` },
          body: JSON.stringify({ givenName: 'Tess', familyName, birthOn: '1950-01-02', zone: 'Europe/London' }),
        }),
      ),
    );
    const [organisationId = ''] = await listOrganisations(api.db);
    for (const answer of answers) {
      const { id } = (await answer.json()) as { id: string };
      const entries = await inOrganisation(api.db, organisationId, (tx) => tx.findBy(AuditEntry, { subjectId: id }));
      expect(entries.map(({ requestId }) => requestId)).toEqual([answer.headers.get('x-request-id')]);
    }
  });
});

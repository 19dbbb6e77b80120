import { practiceView, type PracticeView } from '@archwright/contracts';
import { inOrganisation, listOrganisations, Directory } from '@archwright/records';
import { loadDemoPractice } from '../../../apps/cli/src/demo-practice/load-demo.js';
import { NOW, openDemoApi, type DemoApi } from './demo-api.js';

let api: DemoApi;
beforeAll(async () => {
  api = await openDemoApi();
}, 60_000);
afterAll(() => api.close());

async function practiceFor(name: string): Promise<PracticeView> {
  const answer = await fetch(`${api.url}/practice`, { headers: { cookie: await api.signIn(name) } });
  expect(answer.status).toBe(200);
  return practiceView.parse(await answer.json());
}

describe('the practice that a screen chooses from', () => {
  it('lists clinics with chairs and people, the laboratory with its benches, and every published path', async () => {
    const practice = await practiceFor('desk');
    expect(practice.today).toBe('2027-01-04');
    expect(practice.clinics.map(({ name }) => name)).toEqual(['North clinic', 'East clinic']);
    expect(practice.clinics[0]?.chairs.map(({ label }) => label)).toEqual(['Chair 1', 'Chair 2']);
    expect(practice.clinics[1]?.clinicians).toHaveLength(2);
    const printing = practice.laboratories[0]?.workCentres.find(({ code }) => code === 'printing');
    expect(printing).toMatchObject({ name: 'Printing', places: 2 });
    expect(practice.paths.map(({ code }) => code)).toContain('two-implant-overdenture');
    expect(practice.paths.find(({ code }) => code === 'digital-printed-bases')?.arches).toEqual(['upper', 'lower']);
    expect(practice.paths).toHaveLength(8);
  });

  it('tells the laboratory whom it works for, but nobody who works there', async () => {
    const practice = await practiceFor('bench');
    expect(practice.laboratories).toHaveLength(1);
    expect(practice.clinics.map(({ name }) => name)).toEqual(['North clinic', 'East clinic']);
    expect(practice.clinics.flatMap(({ chairs, clinicians }) => [...chairs, ...clinicians])).toEqual([]);
  });

  it('leaves out a path that was withdrawn and a chair that was retired', async () => {
    const before = await practiceFor('admin');
    const path = before.paths.find(({ code }) => code === 'repair');
    const chair = before.clinics[0]?.chairs[1];
    const [organisationId = ''] = await listOrganisations(api.db);
    await inOrganisation(api.db, organisationId, async (tx) => {
      await tx.query('INSERT INTO treatment_path_withdrawal (id, path_version_id) VALUES (gen_random_uuid(), $1)', [
        path?.versionId,
      ]);
      await tx.query('UPDATE resource SET retired_at = $2 WHERE id = $1', [chair?.id, new Date(NOW.getTime() - 1)]);
    });
    const after = await practiceFor('admin');
    expect(after.paths).toEqual(before.paths.filter(({ code }) => code !== 'repair'));
    expect(after.clinics[0]?.chairs.map(({ label }) => label)).toEqual(['Chair 1']);
  });

  it('is loaded once, however often it is loaded', async () => {
    expect(await loadDemoPractice(api.db, NOW)).toBe(false);
    expect(await listOrganisations(api.db)).toHaveLength(1);
    expect(await api.db.getRepository(Directory).countBy({ kind: 'sign-in' })).toBe(6);
  });
});

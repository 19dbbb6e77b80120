import { sweep } from '@archwright/casework';
import {
  adjustmentView,
  aftercareView,
  caseView,
  problem,
  recallPage,
  referralTaskView,
  soreSpotView,
  type CaseView,
  type SoreSpotView,
} from '@archwright/contracts';
import { AuditEntry, Notice, Recall, ReferralTask, uuidv7 } from '@archwright/records';
import { caseOf, openTwoPractices, type TwoPractices } from './cases-client.js';

const day = (on: string) => new Date(`${on}T12:00:00Z`);

describe('aftercare over HTTP', () => {
  let two: TwoPractices;
  beforeAll(async () => {
    two = await openTwoPractices();
  }, 60_000);
  afterAll(() => two.close());

  const spotBody = (over: Record<string, unknown> = {}) => ({
    arch: 'lower',
    region: 'lingual-left',
    foundOn: '2027-01-04',
    pain: 4,
    suspectedCause: 'long-border',
    ...over,
  });
  const adjustmentBody = (over: Record<string, unknown> = {}) => ({
    arch: 'lower',
    surface: 'border',
    what: 'Lingual border shortened beside the spot.',
    amount: 'A light stroke.',
    ...over,
  });
  const spotOf = (caseId: string, over: Record<string, unknown> = {}): Promise<SoreSpotView> =>
    two.clinician.get(`POST /cases/${caseId}/sore-spots`, soreSpotView, { body: spotBody(over) });
  const aftercareOf = (caseId: string) => two.desk.get(`GET /cases/${caseId}/aftercare`, aftercareView);
  const sweepOn = (on: string) => sweep(two.api.db, two.organisationId, day(on));
  const tasksOf = (caseId: string) => two.rows((tx) => tx.countBy(ReferralTask, { caseId }));

  describe('the sore-spot map', () => {
    it('shows who found what where and when, and what was done for it', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const answer = await two.clinician.ask(`POST /cases/${caseId}/sore-spots`, { body: spotBody() });
      expect(answer).toMatchObject({ status: 201, etag: '"1"' });
      const spot = soreSpotView.parse(answer.body);
      expect(spot).toMatchObject({ side: 'left', pain: 4, healedOn: null, watch: { referOn: '2027-01-18' } });
      const adjusted = await two.clinician.get(`POST /cases/${caseId}/adjustments`, adjustmentView, {
        body: adjustmentBody({ soreSpotId: spot.id }),
      });
      await two.clinician.get(`POST /cases/${caseId}/adjustments`, adjustmentView, {
        body: adjustmentBody({ arch: 'upper', surface: 'occlusal-surface', what: 'Right molars evened out.' }),
      });
      const seen = await aftercareOf(caseId);
      expect(seen.sentence).toBe('1 sore spot is open.');
      expect(seen.soreSpots).toMatchObject([{ id: spot.id, adjustments: [{ id: adjusted.id, surface: 'border' }] }]);
      expect(seen.otherAdjustments).toMatchObject([{ arch: 'upper', soreSpotId: null }]);
      expect(seen.caution.source).toBe('common practice, no source');
      const { events } = await two.desk.get(`GET /cases/${caseId}`, caseView);
      expect(events.map(({ sentence }) => sentence)).toContain('A sore spot was found: lower lingual left.');
      const audit = await two.rows((tx) => tx.findBy(AuditEntry, { subjectId: spot.id }));
      expect(audit.map(({ action }) => action)).toEqual(['sore-spot-found']);
    });

    it('refuses what does not fit, naming what would', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const wrong: [Record<string, unknown>, string][] = [
        [{ region: 'palate' }, 'region'],
        [{ foundOn: '2027-01-05' }, 'foundOn'],
        [{ pain: 11 }, 'pain'],
        [{ suspectedCause: 'bad-luck' }, 'suspectedCause'],
      ];
      for (const [over, path] of wrong) {
        const { status, body } = await two.clinician.ask(`POST /cases/${caseId}/sore-spots`, { body: spotBody(over) });
        const refused = problem.parse(body);
        expect([over, status, refused.errors?.[0]?.path]).toEqual([over, 400, path]);
        expect(refused.errors?.[0]?.accepted).toBeDefined();
      }
      const other = await spotOf((await caseOf(two.desk)).id);
      const foreign = adjustmentBody({ soreSpotId: other.id });
      expect((await two.clinician.ask(`POST /cases/${caseId}/adjustments`, { body: foreign })).status).toBe(404);
      const spot = await spotOf(caseId);
      const otherJaw = adjustmentBody({ arch: 'upper', soreSpotId: spot.id });
      expect((await two.clinician.ask(`POST /cases/${caseId}/adjustments`, { body: otherJaw })).status).toBe(400);
    });

    it('writes one spot for repeats of one call, and heals it once from the version that was seen', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const call = `POST /cases/${caseId}/sore-spots`;
      expect((await two.clinician.ask(call, { body: spotBody(), key: null })).status).toBe(400);
      const key = 'one-sore-spot';
      const first = await two.clinician.ask(call, { body: spotBody(), key });
      expect((await two.clinician.ask(call, { body: spotBody(), key })).body).toEqual(first.body);
      const { id } = soreSpotView.parse(first.body);
      expect((await aftercareOf(caseId)).soreSpots).toHaveLength(1);
      const heal = (version?: number, healedOn = '2027-01-04') =>
        two.clinician.ask(`PUT /sore-spots/${id}/healing`, { body: { healedOn }, ...(version && { version }) });
      expect((await heal()).status).toBe(428);
      expect((await heal(2)).status).toBe(412);
      expect((await heal(1, '2027-01-03')).status).toBe(400);
      expect(await heal(1)).toMatchObject({ status: 200, etag: '"2"', body: { watch: { state: 'healed' } } });
      expect((await heal(2)).status).toBe(409);
      expect((await aftercareOf(caseId)).sentence).toBe('No sore spot is open.');
    });

    it('is written by clinicians, seen by the clinic, and unknown to everyone else', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const spot = await spotOf(caseId);
      const post = `POST /cases/${caseId}/sore-spots`;
      const heal = { body: { healedOn: '2027-01-04' }, version: 1 };
      for (const person of [two.desk, two.bench]) {
        expect((await person.ask(post, { body: spotBody() })).status).toBe(403);
        expect((await person.ask(`PUT /sore-spots/${spot.id}/healing`, heal)).status).toBe(403);
      }
      expect((await two.bench.ask(`GET /cases/${caseId}/aftercare`)).status).toBe(403);
      expect((await two.bench.ask('GET /recalls')).status).toBe(403);
      expect((await two.stranger.ask(`GET /cases/${caseId}/aftercare`)).status).toBe(404);
      expect((await two.clinician.ask(`GET /cases/${uuidv7()}/aftercare`)).status).toBe(404);
    });
  });

  it('keeps recalls from the practice next door', async () => {
    const { id: caseId } = await caseOf(two.desk);
    const id = uuidv7();
    await two.rows((tx) => tx.insert(Recall, { id, caseId, kind: 'RN', dueOn: '2027-01-04', state: 'due' }));
    expect((await two.stranger.get('GET /recalls', recallPage)).items).toEqual([]);
    const body = { decision: 'done', reason: 'By telephone.' };
    expect((await two.stranger.ask(`PUT /recalls/${id}/decision`, { body, version: 1 })).status).toBe(404);
    expect((await two.desk.ask(`PUT /recalls/${id}/decision`, { body })).status).toBe(428);
    expect((await two.desk.ask(`PUT /recalls/${id}/decision`, { body, version: 1 })).status).toBe(200);
  });

  it('is described with all of its calls', async () => {
    const description = await (await fetch(new URL('/api/openapi.json', two.api.url))).text();
    const { paths } = JSON.parse(description) as { paths: Record<string, object> };
    const calls = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path.replace('/api/v1', '')}`),
    );
    expect(calls).toEqual(
      expect.arrayContaining([
        'get /cases/{id}/aftercare',
        'post /cases/{id}/sore-spots',
        'post /cases/{id}/adjustments',
        'put /cases/{id}/visit-place',
        'put /sore-spots/{id}/healing',
        'put /referral-tasks/{id}/decision',
        'get /recalls',
        'put /recalls/{id}/decision',
        'get /patients/{id}/cautions',
        'post /patients/{id}/cautions',
        'put /cautions/{id}/end',
      ]),
    );
  });

  describe('the two-week counter', () => {
    it('opens one referral when a spot has not healed, counted from the adjustment, and tells the clinic', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const spot = await spotOf(caseId, { foundOn: '2026-12-28' });
      const body = adjustmentBody({ soreSpotId: spot.id });
      await two.clinician.get(`POST /cases/${caseId}/adjustments`, adjustmentView, { body });
      const opened: number[] = [];
      for (const on of ['2027-01-17', '2027-01-18', '2027-01-19']) {
        await sweepOn(on);
        opened.push(await tasksOf(caseId));
      }
      expect(opened).toEqual([0, 1, 1]);
      const [found] = (await aftercareOf(caseId)).soreSpots;
      expect(found?.referral).toMatchObject({ state: 'open', dueOn: '2027-01-18', version: 1 });
      expect(found?.referral?.reason).toContain('Not a denture problem until shown otherwise');
      const notices = await two.rows((tx) => tx.findBy(Notice, { caseId, kind: 'sore-spot-referral' }));
      expect(notices.map(({ recipient }) => recipient)).toContain('clinic');
    });

    it('is swept by two workers at once and still opens one', async () => {
      const { id: caseId } = await caseOf(two.desk);
      await spotOf(caseId, { foundOn: '2026-12-20' });
      await Promise.all(['2027-01-04', '2027-01-04', '2027-01-04'].map(sweepOn));
      expect(await tasksOf(caseId)).toBe(1);
      expect((await aftercareOf(caseId)).sentence).toBe('1 sore spot has not healed in two weeks: refer.');
    });

    it('is decided once, by a clinician; declining says why', async () => {
      const { id: caseId } = await caseOf(two.desk);
      await spotOf(caseId, { foundOn: '2026-12-20' });
      await sweepOn('2027-01-04');
      const [spot] = (await aftercareOf(caseId)).soreSpots;
      const decide = (body: unknown, person = two.clinician, version = 1) =>
        person.ask(`PUT /referral-tasks/${spot?.referral?.id ?? ''}/decision`, { body, version });
      const declined = { decision: 'declined', note: 'Seen by the oral medicine department last week.' };
      expect((await decide({ decision: 'declined' })).status).toBe(400);
      expect((await decide(declined, two.desk)).status).toBe(403);
      expect((await decide(declined, two.clinician, 2)).status).toBe(412);
      const answer = await decide(declined);
      expect(answer).toMatchObject({ status: 200, etag: '"2"' });
      expect(referralTaskView.parse(answer.body)).toMatchObject({ state: 'declined', decisionNote: declined.note });
      expect((await decide(declined, two.clinician, 2)).status).toBe(409);
      expect((await aftercareOf(caseId)).sentence).toBe('1 sore spot is open.');
    });

    it('is not asked for any more after a death, and a case that is given up calls nobody in', async () => {
      const dead = await caseOf(two.desk);
      await spotOf(dead.id, { foundOn: '2026-12-20' });
      await sweepOn('2027-01-04');
      const left = await caseOf(two.desk);
      const recall = { kind: 'RN', dueOn: '2027-01-04', state: 'due' } as const;
      await two.rows((tx) => tx.insert(Recall, { id: uuidv7(), caseId: left.id, ...recall }));
      const end = ({ id, version }: CaseView, to: string) =>
        two.desk.get(`PUT /cases/${id}/state`, caseView, { body: { to, reason: 'Told by the daughter.' }, version });
      await end(dead, 'ended-by-death');
      await end(left, 'abandoned');
      expect((await aftercareOf(dead.id)).soreSpots[0]?.referral?.state).toBe('resolved');
      expect((await aftercareOf(left.id)).recalls.map(({ state }) => state)).toEqual(['withdrawn']);
      const late = await two.clinician.ask(`POST /cases/${dead.id}/sore-spots`, { body: spotBody() });
      expect(late.status).toBe(409);
    });

    it('is settled when the spot heals first', async () => {
      const { id: caseId } = await caseOf(two.desk);
      const { id } = await spotOf(caseId, { foundOn: '2026-12-20' });
      await sweepOn('2027-01-04');
      const body = { healedOn: '2027-01-04' };
      const healed = await two.clinician.get(`PUT /sore-spots/${id}/healing`, soreSpotView, { body, version: 1 });
      expect(healed.referral).toMatchObject({ state: 'resolved', version: 2 });
      await sweepOn('2027-02-04');
      expect((await aftercareOf(caseId)).soreSpots[0]?.referral?.state).toBe('resolved');
    });
  });
});

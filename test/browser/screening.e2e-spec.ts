import { jest } from '@jest/globals';
import { practiceView, stageView } from '@archwright/contracts';
import { UserAccount, createDataSource, inOrganisation, listOrganisations } from '@archwright/records';
import type { Browser } from 'playwright-core';
import { Cast } from '../../apps/cli/src/demo/cast.js';
import { bookedCase, found } from '../e2e/booking-practice.js';
import { openBrowser, signIn, type Person } from '../support/browser.js';
import { startDemoService, type DemoService } from '../support/demo-service.js';
import { writeMeasured } from '../support/measured-patients.js';
import { faultsOfScreen } from '../support/screens.js';

jest.setTimeout(240_000);

const METHOD = { landmarks: 'subnasale-gnathion' };
const SENTENCE = 'Vertical dimension at rest 93 mm: 30 last values of other patients of this clinic lie about 68 mm';

describe('what stands out', () => {
  let service: DemoService;
  let browser: Browser;
  let person: Person;
  let stageId: string;
  let number: string;

  beforeAll(async () => {
    [service, browser] = await Promise.all([startDemoService(), openBrowser()]);
    const cast = new Cast(service.url);
    await cast.signIn();
    const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
    const booked = await bookedCase({ desk: cast.desk, practice }, { path: 'digital-printed-bases', clinics: 1 });
    await measureOthers(found(booked.clinicIds[0]));
    const stage = found(booked.stages.find(({ code }) => code === 'D1'));
    [stageId, number] = [stage.id, booked.number];
    const path = `/stages/${stageId}`;
    const { version } = await cast.clinician.call({ method: 'GET', path, answer: stageView });
    const body = { readings: [{ code: 'VDR', value: 93, method: METHOD }] };
    await cast.clinician.call({ method: 'POST', path: `${path}/captures`, version, body, answer: stageView });
  });
  afterAll(async () => {
    await browser.close();
    await service.stop();
  });
  afterEach(async () => {
    expect(person.complaints.take()).toEqual([]);
    await person.leave();
  });

  /** Thirty patients about 68 mm, as the worker finds them. */
  async function measureOthers(clinicId: string): Promise<void> {
    const settings = { url: service.databaseUrl, applicationName: 'screening-suite', connections: 1 };
    const db = await createDataSource(settings).initialize();
    const [organisationId = ''] = await listOrganisations(db);
    await inOrganisation(db, organisationId, async (tx) => {
      const { id: recordedBy } = await tx.findOneByOrFail(UserAccount, { mail: 'chair@example.test' });
      const values = Array.from({ length: 30 }, (_, at) => 68 + (((at * 7) % 9) - 4) / 2);
      const from = new Date('2026-11-02T09:00:00Z');
      const code = 'vertical-dimension-at-rest';
      await writeMeasured(tx, { clinicId, recordedBy, code, unit: 'mm', method: METHOD, values, from, firstNumber: 1 });
    });
    await db.destroy();
  }

  it('is said at the stage, beside the size of the group, on a screen that everybody can use', async () => {
    person = await signIn(browser, service.url, 'clinician');
    const { page } = person;
    await page.goto(`/chair/stages/${stageId}`);
    await page.getByText(SENTENCE).waitFor();
    await page.getByText('nothing waits for it').waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
  });

  it('is listed for the practice until somebody has seen it', async () => {
    person = await signIn(browser, service.url, 'manager');
    const { page } = person;
    await page.goto('/practice');
    const list = page.getByRole('region', { name: 'Stands out' });
    await list.getByText(SENTENCE).waitFor();
    await list.getByRole('link', { name: number }).waitFor();
    expect(await faultsOfScreen(page)).toEqual([]);
    await list.getByRole('button', { name: `Mark as seen: ${number}` }).click();
    await list.waitFor({ state: 'detached' });
  });
});

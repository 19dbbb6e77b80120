import { jest } from '@jest/globals';
import { caseCourse, photographList, photographView, type PhotographView } from '@archwright/contracts';
import { Photograph } from '@archwright/records';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';
import { cookieOf, postSession } from './practice/demo-api.js';

jest.setTimeout(240_000);

/** A picture of one pixel as ITU-T T.81 has it: JFIF, a frame of 1 by 1, a scan. */
const HEAD = [0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0];
const FRAME = [0xff, 0xc0, 0, 11, 8, 0, 1, 0, 1, 1, 1, 0x11, 0];
const SCAN = [0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0x3f, 0xff, 0xd9];
const NOTES = [0xff, 0xe1, 0, 8, 0x45, 0x78, 0x69, 0x66, 0, 0];
const base64 = (...parts: number[][]): string => Buffer.from(parts.flat()).toString('base64');
const JPEG = base64(HEAD, FRAME, SCAN);

describe('photographs of a visit', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let caseId: string;
  let stageId: string;
  let kept: PhotographView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    caseId = (await bookedCase({ ...practice, desk: chair.desk })).id;
    stageId = (await chair.begin(caseId, 'V1')).id;
  });
  afterAll(() => practice.close());

  const keep = (body: object) =>
    chair.clinician.call({ method: 'POST', path: `/stages/${stageId}/photographs`, body, answer: photographView });
  const remove = (id: string, reason: string) =>
    chair.clinician.call({
      method: 'POST',
      path: `/stages/${stageId}/photographs/${id}/removal`,
      body: { reason },
      answer: photographView,
    });
  const list = () =>
    chair.clinician.call({ method: 'GET', path: `/stages/${stageId}/photographs`, answer: photographList });
  async function picture(id: string): Promise<Response> {
    const cookie = cookieOf(
      await postSession(practice.url, { signInName: 'chair@example.test', password: demoPassword }),
    );
    return fetch(`${practice.url}/stages/${stageId}/photographs/${id}/picture`, { headers: { cookie } });
  }

  it.each([
    ['no picture', { caption: 'Upper ridge', jpeg: base64([1, 2, 3, 4]) }, 'jpeg', /no JPEG file/],
    ['notes of a camera', { caption: 'Upper ridge', jpeg: base64(HEAD, NOTES, FRAME, SCAN) }, 'jpeg', /carries notes/],
    ['letters that are no base 64', { caption: 'Upper ridge', jpeg: '%%%%' }, 'jpeg', /base 64/],
    ['no caption', { caption: ' ', jpeg: JPEG }, 'caption', /\w/],
  ])('are refused for %s, and nothing is kept', async (_, body, path, said) => {
    const refused = await refusal(keep(body));
    expect([refused.status, refused.problem.errors?.map((each) => each.path)]).toEqual([400, [path]]);
    expect(refused.problem.errors?.[0]?.problem).toMatch(said);
    expect(await practice.rows((tx) => tx.count(Photograph))).toBe(0);
  });

  it('are kept with who took them, and come back byte by byte, never from a cache', async () => {
    const { version } = await chair.view(stageId);
    kept = await keep({ caption: ' Upper ridge from below ', jpeg: JPEG });
    expect(kept).toMatchObject({ caption: 'Upper ridge from below', widthPx: 1, heightPx: 1, removed: null });
    expect(kept.recordedBy).toMatch(/Example$/);
    expect((await chair.view(stageId)).version).toBe(version + 1);
    const answer = await picture(kept.id);
    expect([answer.status, answer.headers.get('content-type'), answer.headers.get('cache-control')]).toEqual([
      200,
      'image/jpeg',
      'private, no-store',
    ]);
    expect(Buffer.from(await answer.arrayBuffer()).toString('base64')).toBe(JPEG);
  });

  it('stand in the course of the case, and what was done in its history', async () => {
    const path = `/cases/${caseId}/course`;
    const course = await chair.clinician.call({ method: 'GET', path, answer: caseCourse });
    expect(found(course.visits.find((visit) => visit.stageId === stageId)).photographs).toEqual([kept]);
    const { events } = await chair.state(caseId);
    expect(events.at(-1)?.sentence).toMatch(/^A photograph was kept: "/);
  });

  it('are taken away with a reason: the picture is gone for good, what happened stays on record', async () => {
    expect((await refusal(remove(kept.id, ' '))).status).toBe(400);
    const removed = await remove(kept.id, 'Of another patient');
    expect(removed.removed?.reason).toBe('Of another patient');
    expect((await list()).items).toEqual([removed]);
    expect((await picture(kept.id)).status).toBe(404);
    const [row] = await practice.rows<{ picture: Buffer | null }[]>((tx) => tx.query('SELECT picture FROM photograph'));
    expect(row).toEqual({ picture: null });
    expect((await refusal(remove(kept.id, 'Again'))).status).toBe(409);
    const path = `/cases/${caseId}/course`;
    const course = await chair.clinician.call({ method: 'GET', path, answer: caseCourse });
    expect(course.visits.flatMap(({ photographs }) => photographs)).toEqual([]);
  });
});

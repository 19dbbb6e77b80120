import { emptyPrescription, readPrescription } from './prescription-draft.js';

const ZONE = 'Europe/London';
const EMPTY = emptyPrescription('2027-01-12');
const FILLED = { ...EMPTY, agent: ' surface agent ', time: '14:05' };

describe('a prescription to sign', () => {
  it('says what is missing, field by field', () => {
    const { body, wrong } = readPrescription(EMPTY, ZONE);
    expect([body, Object.keys(wrong)]).toEqual([null, ['agent', 'time']]);
    expect(Object.keys(readPrescription({ ...FILLED, time: '25:00' }, ZONE).wrong)).toEqual(['time']);
  });

  it('sends nothing of what was left empty, and the time of the disinfection as an instant', () => {
    expect(readPrescription(FILLED, ZONE)).toEqual({
      body: { disinfection: { agent: 'surface agent', at: '2027-01-12T14:05:00Z' } },
      wrong: {},
    });
  });

  it('sends shade, mould and note as they were meant', () => {
    expect(readPrescription({ ...FILLED, shade: 'light ', mould: ' ', note: 'as before' }, ZONE).body).toMatchObject({
      shade: 'light',
      note: 'as before',
    });
    expect(readPrescription({ ...FILLED, mould: ' ' }, ZONE).body).not.toHaveProperty('mould');
  });
});

import { fieldErrors, hasStatus, ProblemError } from './errors.js';

const refusal = (errors: { path: string; problem: string; accepted?: string }[]): ProblemError =>
  new ProblemError({ type: 'about:blank', title: 'Refused', status: 400, detail: 'Two fields', code: 'x.y', errors });

describe('fieldErrors', () => {
  it('puts each refusal, with what is accepted, under its path whatever way the path is written', () => {
    const error = refusal([
      { path: '/arches/0/pathVersionId', problem: 'unknown path', accepted: 'a published path' },
      { path: 'wishes.from', problem: 'not a time' },
      { path: 'readings[2].value', problem: 'too large' },
    ]);
    expect(fieldErrors(error)).toEqual({
      'arches.0.pathVersionId': 'unknown path. Accepted: a published path.',
      'wishes.from': 'not a time',
      'readings.2.value': 'too large',
    });
  });

  it('keeps the first refusal of a field and ignores errors of other kinds', () => {
    expect(
      fieldErrors(
        refusal([
          { path: 'mail', problem: 'first' },
          { path: 'mail', problem: 'second' },
        ]),
      ),
    ).toEqual({ mail: 'first' });
    expect(fieldErrors(new Error('else'))).toEqual({});
  });
});

it('tells a stale version from another refusal', () => {
  expect(hasStatus(refusal([]), 412)).toBe(false);
  expect(hasStatus(refusal([]), 400)).toBe(true);
});

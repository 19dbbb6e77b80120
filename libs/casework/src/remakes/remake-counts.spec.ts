import { casesOf, countRemakes } from './remake-counts.js';

const entry = (cause: string, origin: string, caseId: string, foundBy: 'check' | 'person' = 'check') => ({
  cause,
  causeTitle: cause.replaceAll('-', ' '),
  origin,
  caseId,
  foundBy,
});

it('counts each cause and each origin on its own, the most frequent first, with what checks found and the cases', () => {
  const entries = [
    entry('looks-refused', 'Set-up', 'a', 'person'),
    entry('impression-flawed', 'Final impression', 'a'),
    entry('impression-flawed', 'Final impression', 'a', 'person'),
    entry('impression-flawed', 'Custom tray', 'b'),
  ];
  expect(countRemakes(entries)).toEqual({
    causes: [
      { key: 'impression-flawed', title: 'impression flawed', remakes: 3, byCheck: 2, cases: 2 },
      { key: 'looks-refused', title: 'looks refused', remakes: 1, byCheck: 0, cases: 1 },
    ],
    origins: [
      { key: 'Final impression', title: 'Final impression', remakes: 2, byCheck: 1, cases: 1 },
      { key: 'Custom tray', title: 'Custom tray', remakes: 1, byCheck: 1, cases: 1 },
      { key: 'Set-up', title: 'Set-up', remakes: 1, byCheck: 0, cases: 1 },
    ],
  });
  expect(casesOf(entries)).toBe(2);
});

it('has nothing to count where nothing was made again', () => {
  expect(countRemakes([])).toEqual({ causes: [], origins: [] });
});

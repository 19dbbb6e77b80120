import { figureRows, rulesSetAside } from './check-figures-view.js';

const figure = (
  rule: string,
  counts: Partial<Record<'stagesJudged' | 'stagesFailed' | 'setAside' | 'wentOn', number>>,
) => ({
  ...{ rule, name: `Rule ${rule}`, version: 1 },
  ...{ stagesJudged: 0, stagesFailed: 0, setAside: 0, wentOn: 0, alertsDismissed: 0 },
  ...counts,
});
const figures = {
  items: [
    figure('silent', {}),
    figure('passed', { stagesJudged: 9 }),
    figure('failed', { stagesJudged: 4, stagesFailed: 3 }),
    figure('aside', { stagesJudged: 5, stagesFailed: 2, setAside: 1, wentOn: 1 }),
  ],
  note: '',
};

it('puts first what people set aside most often, and last what never spoke', () => {
  expect(figureRows(figures).map(({ id }) => id)).toEqual(['aside', 'failed', 'passed', 'silent']);
  expect(figureRows(figures)[0]?.cells).toEqual(['5', '2', '1', '1', '0']);
  expect(rulesSetAside(figures)).toBe(1);
});

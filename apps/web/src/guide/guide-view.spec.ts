import { guideSteps } from '../words/guide.js';
import { stepAt } from './guide-view.js';

const steps = guideSteps['front-desk'];

it('goes on with the pages of the task, one step at a time', () => {
  const way = ['/desk', '/find', '/desk/cases/new', '/desk/cases/c/offers', '/desk/cases/c'];
  let reached = 0;
  const seen = way.map((page) => (reached = stepAt(steps, page, reached)));
  expect(seen).toEqual([0, 1, 2, 3, 4]);
});

it('stays where it was on pages off the way, back at an earlier one, and at one that is still far', () => {
  expect(stepAt(steps, '/caught-mail', 2)).toBe(2);
  expect(stepAt(steps, '/desk', 3)).toBe(3);
  expect(stepAt(steps, '/desk/cases/c', 0)).toBe(0);
});

it.each(Object.entries(guideSteps))('begins for the %s where their day begins, and leads somewhere', (_, task) => {
  expect(task.length).toBeGreaterThan(1);
  expect(['/desk', '/bench', '/chair', '/practice'].some((home) => task[0]?.at.test(home))).toBe(true);
});

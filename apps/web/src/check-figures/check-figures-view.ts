import type { CheckFigures } from '@archwright/contracts';

type Figure = CheckFigures['items'][number];

const setAsideOf = ({ setAside, wentOn, alertsDismissed }: Figure): number => setAside + wentOn + alertsDismissed;

/** How many rules had failed checks that people set aside, in whichever way. */
export const rulesSetAside = ({ items }: CheckFigures): number => items.filter((each) => setAsideOf(each) > 0).length;

/** Rules most often set aside first, those that never judged anything last; the order of a visit among equals. */
export function figureRows({ items }: CheckFigures): { id: string; head: string; cells: string[] }[] {
  const rank = (each: Figure) => [setAsideOf(each), each.stagesFailed, each.stagesJudged > 0 ? 1 : 0];
  return [...items]
    .sort((a, b) => rank(b).reduce((order, n, at) => order || n - (rank(a)[at] ?? 0), 0))
    .map(({ rule, name, stagesJudged, stagesFailed, setAside, wentOn, alertsDismissed }) => ({
      id: rule,
      head: name,
      cells: [stagesJudged, stagesFailed, setAside, wentOn, alertsDismissed].map(String),
    }));
}

import { undominated } from './undominated.js';

const way = (name: string, movedVisits: number, deliveryDay: number, againstWishes: number) => ({
  name,
  costs: [movedVisits, deliveryDay, againstWishes],
});
const names = (...ways: ReturnType<typeof way>[]) => undominated(ways, ({ costs }) => costs).map(({ name }) => name);

describe('undominated', () => {
  it('keeps every way that is better in something', () => {
    expect(names(way('fewest', 3, 20, 2), way('earliest', 5, 18, 2), way('wished', 4, 22, 0))).toEqual([
      'fewest',
      'earliest',
      'wished',
    ]);
  });

  it('drops what costs more and gives nothing for it, wherever it stands', () => {
    expect(names(way('fewest', 3, 20, 2), way('later', 3, 21, 2))).toEqual(['fewest']);
    expect(names(way('worse', 4, 20, 2), way('better', 4, 20, 1))).toEqual(['better']);
  });

  it('keeps the first of equals', () => {
    expect(names(way('fewest', 3, 20, 1), way('earliest', 3, 20, 1), way('wished', 3, 20, 1))).toEqual(['fewest']);
  });
});

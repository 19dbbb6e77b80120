import { checkPath, parsePath } from '../check-path.js';
import { shippedPaths } from './shipped.js';

describe('shipped paths', () => {
  it.each(shippedPaths.map((path) => [path.code, path] as const))(
    '%s is sound and survives being stored',
    (_, path) => {
      expect(checkPath(path)).toEqual([]);
      expect(parsePath(JSON.parse(JSON.stringify(path)))).toEqual(path);
    },
  );
});

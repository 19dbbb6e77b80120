import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

const source = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const searchThread = source('libs/casework/src/planning/search-thread.ts');
const solveThread = source('apps/cli/src/solve/solve-thread.ts');

/**
 * Each application becomes one ES module in `dist/`, our libs inside, packages outside.
 * Types are checked by the lint run, so the build only strips them.
 */
export default (options) => ({
  ...options,
  // Searches run on threads, whose modules stand beside the application's.
  entry: {
    main: options.entry,
    'search-thread': searchThread,
    ...(options.entry.includes('apps/cli') ? { 'solve-thread': solveThread } : {}),
  },
  output: { ...options.output, filename: `${dirname(options.output.filename)}/[name].js` },
  devtool: 'source-map',
  optimization: { ...options.optimization, sideEffects: true, providedExports: true, usedExports: true },
  module: {
    ...options.module,
    // None of our files does anything by being imported: a search thread then loads what it uses, and no queue or framework.
    rules: [...options.module.rules, { test: /[\\/]libs[\\/].*\.ts$/, sideEffects: false }],
    // `import.meta.url` must name the built file, not the source it came from.
    parser: { javascript: { importMeta: false, url: false, worker: false } },
  },
  plugins: options.plugins.filter((plugin) => plugin.constructor.name !== 'ForkTsCheckerWebpackPlugin'),
});

/**
 * Each application becomes one ES module in `dist/`, our libs inside, packages outside.
 * Types are checked by the lint run, so the build only strips them.
 */
export default (options) => ({
  ...options,
  devtool: 'source-map',
  module: {
    ...options.module,
    // `import.meta.url` must name the built file, not the source it came from.
    parser: { javascript: { importMeta: false, url: false, worker: false } },
  },
  plugins: options.plugins.filter((plugin) => plugin.constructor.name !== 'ForkTsCheckerWebpackPlugin'),
});

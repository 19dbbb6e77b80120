import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const libs = readdirSync(`${root}/libs`);

const shared = {
  rootDir: root,
  testEnvironment: 'node',
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  moduleNameMapper: {
    ...Object.fromEntries(libs.map((lib) => [`^@archwright/${lib}$`, `<rootDir>/libs/${lib}/src/index.ts`])),
    '^(\\.{1,2}/.*)\\.js$': '$1',
  },
  modulePathIgnorePatterns: ['<rootDir>/dist', '<rootDir>/.data'],
  transform: {
    '^.+\\.tsx?$': [
      '@swc/jest',
      {
        jsc: {
          target: 'es2022',
          parser: { syntax: 'typescript', tsx: true, decorators: true },
          transform: { legacyDecorator: true, decoratorMetadata: true, react: { runtime: 'automatic' } },
        },
        module: { type: 'es6' },
      },
    ],
  },
};

/** Unit tests stand beside the code; whatever needs a server, a database or a browser stands in `test/`. */
export default {
  testTimeout: 30_000,
  projects: [
    {
      ...shared,
      displayName: 'unit',
      testMatch: ['<rootDir>/libs/**/*.spec.ts', '<rootDir>/apps/**/*.spec.ts', '<rootDir>/apps/**/*.spec.tsx'],
    },
    {
      ...shared,
      displayName: 'e2e',
      setupFiles: ['<rootDir>/test/support/one-query-at-a-time.ts'],
      testMatch: ['<rootDir>/test/e2e/**/*.e2e-spec.ts'],
    },
    { ...shared, displayName: 'faults', testMatch: ['<rootDir>/test/faults/**/*.e2e-spec.ts'] },
    { ...shared, displayName: 'browser', testMatch: ['<rootDir>/test/browser/**/*.e2e-spec.ts'] },
  ],
};

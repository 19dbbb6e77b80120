// Holds the architecture: which way imports may point, and what the pure libs must not know.
// Rules that only please a taste stay out.
import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import boundaries from 'eslint-plugin-boundaries';
import reactHooks from 'eslint-plugin-react-hooks';
import prettier from 'eslint-config-prettier';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

const PURE = ['kernel', 'calendar', 'protocol', 'planner', 'measures', 'tracing', 'screening', 'forecast'];
const root = fileURLToPath(new URL('..', import.meta.url));
const SERVER = ['casework', 'records', 'jobs', 'notices', 'interop', 'platform'];
/** What a pure lib may import besides its own files and other pure libs. Extend it only with pure packages. */
const PURE_MAY_IMPORT = String.raw`^(?!\.{1,2}/|@archwright/|temporal-polyfill$|rrule$|zod$|@stdlib/|ml-matrix$|simple-statistics$)`;

const kind = (type) => ({ element: { type } });
const to = (...types) => ({ to: { element: { types: { anyOf: types } } } });
const pureFiles = PURE.map((lib) => `libs/${lib}/src/**/*.ts`);
const acrossLibs = { regex: 'libs/[a-z]+/src', message: 'Import another lib by its package name, never by its path.' };

const addingToQueue = {
  name: '@archwright/jobs',
  importNames: ['Enqueuer', 'addJob'],
  message: 'Write an outbox row in the transaction; only the relay adds to the queue.',
};

export default defineConfig(
  { ignores: ['dist/**', 'coverage/**', '**/*.{js,cjs,mjs}'] },
  js.configs.recommended,
  tseslint.configs.strictTypeChecked,
  { languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } } },
  // The framework takes plain options where it declares a class; nobody writes `new` there.
  { rules: { '@typescript-eslint/no-unsafe-class-instance-assignment': 'off' } },
  {
    files: ['apps/**/*.{ts,tsx}', 'libs/**/*.ts'],
    plugins: { boundaries },
    settings: {
      'import/resolver': { typescript: { project: './tsconfig.json' } },
      'boundaries/elements': [
        { type: 'pure', pattern: `libs/(${PURE.join('|')})` },
        { type: 'contracts', pattern: 'libs/contracts' },
        { type: 'server', pattern: `libs/(${SERVER.join('|')})` },
        { type: 'casework', pattern: 'libs/casework' },
        { type: 'web', pattern: 'apps/web' },
        { type: 'app', pattern: 'apps/(api|worker|cli)' },
      ],
    },
    rules: {
      'boundaries/dependencies': [
        'error',
        {
          default: 'disallow',
          policies: [
            { from: kind('pure'), allow: to('pure') },
            { from: kind('contracts'), allow: to('pure') },
            { from: kind('server'), allow: to('server', 'contracts', 'pure') },
            { from: kind('casework'), allow: to('casework', 'server', 'contracts', 'pure') },
            { from: kind('web'), allow: to('contracts', 'pure') },
            { from: kind('app'), allow: to('casework', 'server', 'contracts', 'pure') },
            { allow: { to: { module: { origin: ['external', 'core'] } } } },
          ],
        },
      ],
      'no-restricted-imports': ['error', { patterns: [acrossLibs], paths: [addingToQueue] }],
    },
  },
  {
    files: pureFiles,
    ignores: ['**/*.spec.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            acrossLibs,
            { regex: PURE_MAY_IMPORT, message: 'A pure lib knows no framework, database or file system.' },
          ],
        },
      ],
      'no-restricted-globals': ['error', 'process', 'console', 'fetch', 'setTimeout', 'setInterval'],
      'no-restricted-syntax': [
        'error',
        {
          selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
          message: 'Take the instant as a parameter.',
        },
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Take the instant as a parameter.',
        },
        {
          selector: "MemberExpression[object.name='Temporal'][property.name='Now']",
          message: 'Take the instant as a parameter.',
        },
        {
          selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
          message: 'Take the seeded generator as a parameter.',
        },
      ],
    },
  },
  {
    // A hook that is called now and then, or that forgets what it depends on, shows only at run time.
    files: ['apps/web/src/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: { 'react-hooks/rules-of-hooks': 'error', 'react-hooks/exhaustive-deps': 'error' },
  },
  {
    // A Nest module is an empty class; its decorator says what it holds.
    rules: { '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }] },
  },
  {
    // Typed arrays and tables are read at indices that the loops bound; a check per read would cost the hot paths.
    files: ['planner', 'screening', 'tracing'].map((lib) => `libs/${lib}/src/**/*.ts`),
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
    },
  },
  {
    // The relay is what the rule above speaks of.
    files: ['apps/worker/src/relay/*.ts', 'libs/casework/src/outbox/relay.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [acrossLibs] }] },
  },
  prettier,
);

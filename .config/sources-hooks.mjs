// How our sources are found and read; see sources-loader.mjs.
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from '@swc/core';

const root = new URL('..', import.meta.url);
const isOurs = (url) => url.startsWith(root.href) && !url.includes('/node_modules/');

export async function resolve(specifier, context, next) {
  const [, lib] = /^@archwright\/(\w+)$/.exec(specifier) ?? [];
  if (lib !== undefined) return { url: new URL(`libs/${lib}/src/index.ts`, root).href, shortCircuit: true };
  const isSource = specifier.startsWith('.') && specifier.endsWith('.js') && isOurs(context.parentURL ?? '');
  return next(isSource && context.parentURL.endsWith('.ts') ? specifier.replace(/\.js$/, '.ts') : specifier, context);
}

export async function load(url, context, next) {
  if (!isOurs(url) || !url.endsWith('.ts')) return next(url, context);
  const filename = fileURLToPath(url);
  const { code } = await transform(await readFile(filename, 'utf8'), {
    filename,
    sourceMaps: 'inline',
    jsc: {
      target: 'es2022',
      parser: { syntax: 'typescript', decorators: true },
      transform: { legacyDecorator: true, decoratorMetadata: true },
    },
    module: { type: 'es6' },
  });
  return { format: 'module', source: code, shortCircuit: true };
}

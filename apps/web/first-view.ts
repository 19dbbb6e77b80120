import type { HtmlTagDescriptor, Plugin } from 'vite';

/** Whatever the frame needs, in one file: as two dozen parts, each a request, it came in turns before the first view. */
const APPLICATION = { name: 'application', test: /\/apps\/web\/src\/app\.tsx$/, priority: 1 };
/** All that comes before it: schemas are told how to work before the application makes its first one. */
const FIRST = { name: 'first', test: /\/node_modules\/zod\/|vite\/preload-helper/, priority: 2 };
/** Fonts of every first view; letters beyond Latin come when they are met. */
const FONTS = /-latin-(400|700)-normal-.*\.woff2$/;

/**
 * Shortens the way to the first view: few files, and the page names those that are needed in any case, so that the browser
 * fetches them side by side instead of finding each in the one before.
 */
export function firstView(): Plugin {
  return {
    name: 'first-view',
    apply: 'build',
    config: () => ({
      build: { rolldownOptions: { output: { codeSplitting: { groups: [FIRST, APPLICATION] } } } },
    }),
    transformIndexHtml: {
      order: 'post',
      handler: (html, { bundle = {} }) => ({ html, tags: Object.keys(bundle).flatMap(preload) }),
    },
  };
}

function preload(file: string): HtmlTagDescriptor[] {
  const at = { href: `/${file}`, crossorigin: true };
  if (/^assets\/(application|app|rolldown-runtime)-.*\.js$/.test(file)) return [link({ rel: 'modulepreload', ...at })];
  if (/^assets\/application-.*\.css$/.test(file)) return [link({ rel: 'preload', as: 'style', ...at })];
  return FONTS.test(file) ? [link({ rel: 'preload', as: 'font', type: 'font/woff2', ...at })] : [];
}

const link = (attrs: Record<string, string | boolean>): HtmlTagDescriptor => ({ tag: 'link', attrs, injectTo: 'head' });

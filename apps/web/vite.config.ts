import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { compressed } from './compressed.js';
import { firstView } from './first-view.js';

const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** What the browser may see: the contracts and the pure libs, nothing of the server. */
const BROWSER_LIBS = ['contracts', 'kernel', 'calendar', 'protocol', 'planner', 'measures', 'tracing', 'screening'];

export default defineConfig({
  root: fromRoot('apps/web'),
  plugins: [react(), firstView(), compressed()],
  resolve: {
    alias: BROWSER_LIBS.map((lib) => ({
      find: `@archwright/${lib}`,
      replacement: fromRoot(`libs/${lib}/src/index.ts`),
    })),
  },
  build: {
    outDir: fromRoot('dist/apps/web'),
    emptyOutDir: true,
    // Inlined files would need `data:` in the content security policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The pure libs only define things: what a screen names of them is all that it has to load.
    rolldownOptions: { treeshake: { moduleSideEffects: [{ test: /\/libs\/[^/]+\/src\//, sideEffects: false }] } },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:3000' } },
  preview: { proxy: { '/api': 'http://127.0.0.1:3000' } },
});

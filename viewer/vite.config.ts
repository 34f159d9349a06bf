import { defineConfig } from 'vite';
import { offline } from './offline.ts';

/** One page that needs no server behind it: every address is relative, nothing is fetched from elsewhere. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  build: { outDir: '../dist/viewer', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 700 },
  worker: { format: 'es' },
  plugins: [offline()],
});

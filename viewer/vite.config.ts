import { defineConfig } from 'vite';

/** One page that needs no server behind it: every address is relative, nothing is fetched from elsewhere. */
export default defineConfig({
  root: 'viewer',
  base: './',
  build: { outDir: '../dist/viewer', emptyOutDir: true, target: 'es2022', sourcemap: false },
  worker: { format: 'es' },
  preview: { port: 4173 },
  server: { fs: { allow: ['..'] } },
});

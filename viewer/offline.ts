import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

/** Adds a service worker that keeps every file of the built page on the device, so that nothing is asked for after the first visit. */
export function offline(): Plugin {
  return {
    name: 'offline', apply: 'build',
    generateBundle(_, bundle) {
      const files = ['./', 'icon.svg', 'bench.webmanifest', ...Object.keys(bundle).filter((name) => name !== 'index.html' && !name.endsWith('.map'))].sort();
      const sum = createHash('sha256');
      for (const [name, file] of Object.entries(bundle).sort(([a], [b]) => (a < b ? -1 : 1))) sum.update(name).update(file.type === 'chunk' ? file.code : file.source);
      this.emitFile({ type: 'asset', fileName: 'offline.js', source: workerText(files, sum.digest('hex').slice(0, 16)) });
    },
  };
}

/** A newer page waits until the last tab of the older one is shut: what that one still loads is of its own time. */
const workerText = (files: readonly string[], version: string): string => `const KEPT = 'bench-${version}', FILES = ${JSON.stringify(files)};
self.addEventListener('install', (event) => event.waitUntil(caches.open(KEPT).then((kept) => kept.addAll(FILES.map((file) => new Request(file, { cache: 'reload' }))))));
self.addEventListener('activate', (event) => event.waitUntil(caches.keys()
  .then((names) => Promise.all(names.filter((name) => name.startsWith('bench-') && name !== KEPT).map((name) => caches.delete(name)))).then(() => self.clients.claim())));
self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(caches.match(event.request, { ignoreSearch: true, ignoreVary: true }).then((kept) => kept ?? fetch(event.request)));
});
`;

// Keeps the program at hand without a network after one visit. The build writes sw-files.js; when
// that changes, the browser installs this worker anew and the old files go.
importScripts('sw-files.js');

const CACHE = `handspan-${self.OFFLINE.version}`;

const keepFiles = async () => {
  const cache = await caches.open(CACHE);
  await cache.addAll(self.OFFLINE.files);
  await self.skipWaiting();
};

const dropOldFiles = async () => {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith('handspan-') && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
};

// The page itself comes fresh where there is a network, its hashed files from the cache.
const kept = (request) => caches.match(request, { ignoreVary: true, ignoreSearch: true });

const freshOrKept = async (request) => {
  try {
    return await fetch(request);
  } catch {
    return (await kept('./')) ?? Response.error();
  }
};

const keptOrFresh = async (request) => (await kept(request)) ?? fetch(request);

self.addEventListener('install', (event) => event.waitUntil(keepFiles()));
self.addEventListener('activate', (event) => event.waitUntil(dropOldFiles()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === 'navigate' ? freshOrKept(request) : keptOrFresh(request));
});

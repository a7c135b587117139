// Lets the pages open without the network. Pages always come from the server when it answers, so that nothing stale is shown after an
// update; without it, from the last complete set of one release. Answers of the API are never kept here: they may hold doses.
const PREFIX = 'shell-';
const PATIENCE_MS = 4000;

self.addEventListener('install', event => event.waitUntil(refresh().then(() => self.skipWaiting())));
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));
self.addEventListener('message', event => {
  if (event.data === 'refresh') event.waitUntil(refresh().catch(() => undefined));
});
self.addEventListener('fetch', event => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  event.respondWith(answer(event.request, pathname));
});

/** Fetches a release as a whole under its own name, then drops the older ones. */
async function refresh() {
  const shell = await (await fetch('/shell.json', { cache: 'no-store' })).json();
  const name = PREFIX + shell.version;
  if (!await caches.has(name)) {
    const part = await caches.open(`${name}-part`);
    await part.addAll(shell.files.map(file => new Request(file, { cache: 'no-cache' })));
    const whole = await caches.open(name);
    for (const request of await part.keys()) await whole.put(request, await part.match(request));
    await caches.delete(`${name}-part`);
  }
  for (const old of await caches.keys()) {
    if (old.startsWith(PREFIX) && old !== name) await caches.delete(old);
  }
}

async function answer(request, pathname) {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch (problem) {
    const kept = await caches.match(pathname, { ignoreSearch: true });
    if (kept) return kept;
    throw problem;
  }
}

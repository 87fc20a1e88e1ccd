/**
 * Opens every page without a server once it was there. Holds the files of one version of the page, which the build writes
 * in below; never touches /api. A new version waits until a person takes it over.
 */
const sw = self as unknown as ServiceWorkerGlobalScope;

/** Files of this build, those that the page begins with, and a name that changes with any of them. */
const { files, first, version } = JSON.parse('__FILES__') as {
  readonly files: readonly string[];
  readonly first: readonly string[];
  readonly version: string;
};
const PREFIX = 'kartwright ';
const OWN = PREFIX + version;
const TAKE_OVER = 'take over';

sw.addEventListener('install', event => {
  event.waitUntil(fill());
  // What the page begins with the browser takes from there by itself, where it knows how: it waits for no worker to start.
  const { addRoutes } = event as unknown as { addRoutes?: (rules: readonly unknown[]) => Promise<void> };
  const condition = { or: ['/', ...first].map(pathname => ({ urlPattern: { pathname, search: '' } })) };
  void addRoutes?.call(event, [{ condition, source: { cacheName: OWN } }]).catch(() => undefined);
});
sw.addEventListener('activate', event => event.waitUntil(clearOlder().then(() => sw.clients.claim())));
sw.addEventListener('message', ({ data }) => {
  if (data === TAKE_OVER) void sw.skipWaiting();
});
sw.addEventListener('fetch', event => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (method !== 'GET' || origin !== sw.location.origin || pathname.startsWith('/api/')) return;
  event.respondWith(kept(pathname === '/' ? '/index.html' : pathname, event.request));
});

/** All of the files or none. What has its hash in its name is taken over from the version before. */
async function fill(): Promise<void> {
  const cache = await caches.open(OWN);
  await Promise.all(
    files.map(async file => {
      const before = file.startsWith('/assets/') ? await caches.match(file) : undefined;
      const response = before ?? (await fetch(file, { cache: 'no-cache' }));
      if (!response.ok) throw new Error(`expected ${file} of this version, got ${response.status}`);
      if (file === '/index.html') await cache.put('/', response.clone());
      await cache.put(file, response);
    }),
  );
}

/** The version before stays too: a page that is open may still fetch a part of it. */
async function clearOlder(): Promise<void> {
  const names = (await caches.keys()).filter(name => name.startsWith(PREFIX) && name !== OWN);
  await Promise.all(names.slice(0, -1).map(name => caches.delete(name)));
}

async function kept(path: string, request: Request): Promise<Response> {
  const own = await (await caches.open(OWN)).match(path);
  return own ?? (await caches.match(path)) ?? fetch(request);
}

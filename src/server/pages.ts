/**
 * The built web page, read into memory once: a request can only ever name a file that was there at the start, so no
 * path in a request can reach anything else on the disk.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

export type Page = { readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string; readonly cache: string };

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

/** Every file under `root` by the path it is asked for with. Throws when there is no index.html. */
export function readPages(root: string): ReadonlyMap<string, Page> {
  const pages = new Map<string, Page>();
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const path = `/${relative(root, file).split(sep).join('/')}`;
    pages.set(path, {
      bytes: new Uint8Array(readFileSync(file)),
      type: TYPES[extname(file)] ?? 'application/octet-stream',
      // The build puts a hash of the content into the name of everything under assets/.
      cache: path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
    });
  }
  const index = pages.get('/index.html');
  if (index === undefined) throw new Error(`readPages: expected index.html in ${root}, found none; run npm run build`);
  pages.set('/', index);
  return pages;
}

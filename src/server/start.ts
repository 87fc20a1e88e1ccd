import { serve } from '@hono/node-server';
import type { App } from '../app/index.ts';
import { readPages } from './pages.ts';
import { createServer, type ServerParts } from './server.ts';

export type StartParts = Omit<ServerParts, 'pages' | 'hosts'> & {
  readonly app: App;
  /** 0: any free port. */
  readonly port: number;
  /** Left out: loopback only. */
  readonly host?: string;
  /** Folder of the built web page; left out: only the API. */
  readonly webRoot?: string;
};

/**
 * Serves until closed. Loopback only unless another host is named, because whoever reaches the port can write.
 * Rejects with the host's error (its `code` is EADDRINUSE when the port is taken).
 */
export function startServer({
  app,
  port,
  host = '127.0.0.1',
  webRoot,
  ...parts
}: StartParts): Promise<{ url: string; close: () => Promise<void> }> {
  const pages = webRoot === undefined ? undefined : readPages(webRoot);
  const server = createServer(app, {
    ...parts,
    ...(pages ? { pages } : {}),
    hosts: [host],
  });
  return new Promise((resolve, reject) => {
    const listening = serve({ fetch: server.fetch, port, hostname: host }, info => {
      listening.off('error', reject);
      const shown = host.includes(':') ? `[${host}]` : host;
      resolve({ url: `http://${shown}:${info.port}/`, close: () => close(listening) });
    });
    listening.once('error', reject);
  });
}

/** Stops at once: an open page holds its live line for ever. */
function close(server: ReturnType<typeof serve>): Promise<void> {
  return new Promise((resolve, reject) => {
    server.close(error => (error ? reject(error) : resolve()));
    if ('closeAllConnections' in server) server.closeAllConnections();
  });
}

import { createServer as createSecure } from 'node:https';
import { serve } from '@hono/node-server';
import { createFront, type FrontParts } from './front.ts';
import { readPages } from './pages.ts';

export type StartParts = Omit<FrontParts, 'pages' | 'hosts' | 'reached' | 'authority'> & {
  /** 0: any free port. */
  readonly port: number;
  /** Left out: loopback only. */
  readonly host?: string;
  /** Names and addresses of this machine on the network, where `host` takes requests from there. */
  readonly names?: () => readonly string[];
  /** Names under which a proxy, or the machine around a container, hands requests on. */
  readonly also?: readonly string[];
  /** Left out: plain HTTP. */
  readonly certificate?: { readonly key: string; readonly cert: string; readonly ca: string };
  /** Folder of the built web page; left out: only the API. */
  readonly webRoot?: string;
};

export type Started = {
  readonly url: string;
  /** Addresses for a phone on the same network, the best first; empty on loopback. */
  readonly reached: readonly string[];
  /** Begins nothing new, finishes what runs, and is gone after five seconds at most. */
  close(): Promise<void>;
};

/** How long a request that runs may still take when the server is to stop. */
const STOP_MS = 5000;

/** Serves until closed. Rejects with the host's error (its `code` is EADDRINUSE when the port is taken). */
export function startServer({
  port,
  host = '127.0.0.1',
  names = () => [],
  also = [],
  certificate,
  webRoot,
  ...parts
}: StartParts): Promise<Started> {
  const scheme = certificate ? 'https' : 'http';
  let taken = port;
  const reached = (): readonly string[] => names().map(name => `${scheme}://${name}:${taken}/`);
  const bare = host.includes(':') ? `[${host}]` : host;
  const front = createFront({
    ...parts,
    ...(webRoot === undefined ? {} : { pages: readPages(webRoot) }),
    ...(certificate && { authority: certificate.ca }),
    hosts: () => [bare, ...also, ...names()],
    reached,
  });
  const secure = certificate && {
    createServer: createSecure,
    serverOptions: { key: certificate.key, cert: certificate.cert, minVersion: 'TLSv1.2' as const },
  };
  return new Promise((resolve, reject) => {
    const listening = serve({ fetch: front.fetch, port, hostname: host, ...secure }, info => {
      listening.off('error', reject);
      taken = info.port;
      const shown = EVERYWHERE.includes(host) ? 'localhost' : bare;
      const close = async (): Promise<void> => {
        front.stop();
        await closed(listening);
      };
      resolve({ url: `${scheme}://${shown}:${info.port}/`, reached: reached(), close });
    });
    listening.once('error', reject);
  });
}

const EVERYWHERE = ['0.0.0.0', '::'];

function closed(server: ReturnType<typeof serve>): Promise<void> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), STOP_MS);
    server.close(error => {
      clearTimeout(late);
      if (error) reject(error);
      else resolve();
    });
    if ('closeIdleConnections' in server) server.closeIdleConnections();
  });
}

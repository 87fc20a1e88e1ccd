/**
 * The front door: who asks, how often, and whether anything stands in the way. Behind it every paired device has a server of
 * its own, on its team's book, with its own name and what its role may do; nothing it can ask for leads to another team.
 */
import { type Context, Hono } from 'hono';
import { compress } from 'hono/compress';
import { type App, appFor, type PairedDevice, type Register, withChain, withDevice } from '../app/index.ts';
import { headers, onlyHosts, onlyOwnPage } from './guard.ts';
import { inLog, type Log } from './log.ts';
import { METRICS_TYPE, Metrics } from './metrics.ts';
import { addPairing, type Secrets } from './pairing.ts';
import { notPaired, problem } from './problem.ts';
import { Buckets } from './rate.ts';
import { routeOf } from './route.ts';
import { createServer, type ServerParts } from './server.ts';
import { addressOf, isSecure, type Who, whoAsks } from './who.ts';

export type FrontParts = Omit<ServerParts, 'stopping' | 'failed'> & {
  readonly register: Register;
  readonly secrets: Secrets;
  /** The book of a team; '' is that of this machine. */
  readonly bookOf: (team: string) => Promise<App>;
  readonly now: () => Date;
  readonly log: Log;
  /** Certificate of the authority, PEM, for a phone to install; left out: there is none. */
  readonly authority?: string;
  /** Addresses under which a phone reaches this server, the best first; empty: loopback only. */
  readonly reached?: () => readonly string[];
};

/** A page that syncs and shows asks some times a second; a burst is a page that opens. */
const ASKING = { perSecond: 40, burst: 400 };
/** Forty bits, ten minutes: at five tries a minute and address nobody gets anywhere. */
const PAIRING = { perSecond: 5 / 60, burst: 5 };
const PAIRING_ALL = { perSecond: 0.5, burst: 30 };

export type Front = {
  readonly fetch: (request: Request, env?: object) => Response | Promise<Response>;
  /** From here on nothing new is begun, and lines that stay open are closed. */
  stop(): void;
};

export function createFront(parts: FrontParts): Front {
  const { register, now, log } = parts;
  const metrics = new Metrics();
  const stopping = new AbortController();
  const ms = (): number => now().getTime();
  const [asking, pairing, pairingAll] = [ASKING, PAIRING, PAIRING_ALL].map(rate => new Buckets(rate, ms)) as [
    Buckets,
    Buckets,
    Buckets,
  ];
  let open = 0;
  metrics.gauge('kartwright_open_requests', 'Requests being answered.', () => open);
  metrics.gauge('kartwright_memory_bytes', 'Resident memory of the process.', () => process.memoryUsage.rss());
  metrics.gauge('kartwright_uptime_seconds', 'Since the process began.', () => process.uptime());

  const front = new Hono<{ Variables: { who: Who } }>();
  front.use(headers);
  front.use(async (c, next) => {
    const from = performance.now();
    open++;
    try {
      await next();
    } finally {
      open--;
      const [seconds, route] = [(performance.now() - from) / 1000, routeOf(c.req.path, c.res.status)];
      metrics.answered(METHODS.has(c.req.method) ? c.req.method : 'other', route, c.res.status, seconds);
      const level = c.res.status >= 500 ? 'error' : c.res.status === 401 || c.res.status === 429 ? 'warn' : 'info';
      log(level, 'answered', {
        method: c.req.method.slice(0, 10),
        route,
        status: c.res.status,
        ms: Math.round(seconds * 1000),
      });
    }
  });
  front.use(compress({ encoding: 'gzip' })); // a phone on a poor line waits for bytes; a live line is left as it is
  // For whoever looks after the process. No word of the book, so no name of a host is asked for.
  front.get('/healthz', c => c.text('ok\n'));
  front.get('/readyz', async c => {
    if (stopping.signal.aborted) return c.text('stopping\n', 503);
    await (await parts.bookOf('')).ends();
    return c.text('ready\n');
  });
  front.use('/api/*', async (c, next) => {
    await next();
    c.header('cache-control', 'no-store');
  });
  front.use(onlyHosts(parts.hosts), onlyOwnPage);
  front.use(async (c, next) => {
    await next();
    if (isSecure(c)) c.header('strict-transport-security', `max-age=${ONE_DAY_S}`);
  });
  front.use(async (c, next) => {
    const who = await whoAsks(c, register, now());
    c.set('who', who);
    if (who.is === 'this machine') return next();
    const wait = asking.take(who.is === 'device' ? who.device.id : addressOf(c));
    return wait > 0 ? tooOften(c, wait) : next();
  });
  front.use('/api/pair', async (c, next) => {
    if (c.req.method !== 'POST') return next();
    const wait = Math.max(pairing.take(addressOf(c)), pairingAll.take('all'));
    return wait > 0 ? tooOften(c, wait) : next();
  });
  front.get('/metrics', c =>
    c.get('who').is === 'this machine' ? c.body(metrics.text(), 200, { 'content-type': METRICS_TYPE }) : notPaired(c),
  );
  if (parts.authority !== undefined)
    front.get('/authority.pem', c =>
      c.body(parts.authority ?? '', 200, {
        'content-type': 'application/x-x509-ca-cert',
        'content-disposition': 'attachment; filename="kartwright-authority.pem"',
      }),
    );
  addPairing(front, parts);

  const servers = new Map<string, { readonly device: PairedDevice; readonly server: Hono }>();
  const shown: ServerParts = {
    ...parts,
    stopping: stopping.signal,
    failed: error => log('error', 'failed', inLog(error)),
  };
  let own: Promise<Hono> | undefined;
  const serverOf = async (device: PairedDevice): Promise<Hono> => {
    const known = servers.get(device.id);
    if (known && known.device.role === device.role && known.device.team === device.team) return known.server;
    const book = await parts.bookOf(device.team);
    const chain = `paired-${device.id}`;
    await register.change(state => withChain(state, device.id, { chain, there: false }));
    const claim = (name: string, there: boolean): Promise<boolean> =>
      register.change(state => withChain(state, device.id, { chain: name, there }));
    const server = createServer(appFor(book, { role: device.role, chain, claim }), { ...shown, team: device.team });
    servers.set(device.id, { device, server });
    return server;
  };
  front.all('*', async c => {
    const who = c.get('who');
    if (who.is === 'nobody') {
      // The empty page, so that it can ask for the code. Nothing else is for everybody.
      const page = c.req.method === 'GET' ? parts.pages?.get(c.req.path) : undefined;
      return page ? c.body(page.bytes, 200, { 'content-type': page.type, 'cache-control': page.cache }) : notPaired(c);
    }
    if (who.is === 'device') {
      await seen(register, who.device, now());
      return (await serverOf(who.device)).fetch(c.req.raw, c.env);
    }
    own ??= parts.bookOf('').then(book => createServer(book, shown));
    return (await own).fetch(c.req.raw, c.env);
  });
  front.onError((error, c) => {
    log('error', 'failed', inLog(error));
    return problem(c, 500, [
      {
        code: 'book',
        where: c.req.path,
        message: 'The server failed.',
        remedy: 'Nothing was recorded. Look at its terminal, and try again.',
      },
    ]);
  });
  return { fetch: (request, env) => front.fetch(request, env ?? {}), stop: () => stopping.abort() };
}

/** No longer: who serves without a certificate tomorrow must still be reached under the same name. */
const ONE_DAY_S = 86_400;
const METHODS = new Set(['GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH']);

/** Once a day is enough to know which devices are still used. */
async function seen(register: Register, device: PairedDevice, now: Date): Promise<void> {
  const day = now.toISOString().slice(0, 10);
  if (device.seen === day) return;
  await register.change(state => ({
    state: withDevice(state, device.id, one => ({ ...one, seen: day })),
    give: undefined,
  }));
}

function tooOften(c: Context, seconds: number): Response {
  c.header('retry-after', String(seconds));
  return problem(c, 429, [
    {
      code: 'too often',
      message: `Expected fewer requests, got more than this server takes from one address.`,
      remedy: `Wait ${seconds} s, then do it again.`,
    },
  ]);
}

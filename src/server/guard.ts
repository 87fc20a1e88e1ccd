/**
 * What stands between the book and other pages in the same browser: which hosts may be asked for, who may write, and
 * the headers that tell a browser to load nothing from elsewhere. Sources: RFC 9110 (Host, Origin), W3C CSP Level 3.
 */
import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import { problem } from './problem.ts';

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/** The host name of a Host header without its port; '' when it is missing or makes no sense. */
function hostName(header: string | undefined): string {
  if (header === undefined) return '';
  const named = /^(\[[0-9a-fA-F:.]+\]|[^:/?#@\s]+)(?::\d{1,5})?$/.exec(header);
  return (named?.[1] ?? '').toLowerCase();
}

/**
 * Refuses a request for a host name that is not ours. A foreign page whose name was pointed at this machine (DNS
 * rebinding) sends its own name here, and gets nothing.
 */
export function onlyHosts(more: readonly string[] | (() => readonly string[]) = []): MiddlewareHandler {
  return async (c, next) => {
    const named = typeof more === 'function' ? more() : more; // a laptop moves from one network to another
    const allowed = new Set([...LOOPBACK, ...named.map(h => h.toLowerCase())]);
    const host = hostName(c.req.header('host') ?? new URL(c.req.url).host);
    if (allowed.has(host)) return next();
    return problem(c, 421, [
      {
        code: 'wrong host',
        message: `expected a request for ${[...allowed].join(', ')}, got one for ${host === '' ? 'no host' : host}`,
        remedy: 'open the address that the program printed when it started',
      },
    ]);
  };
}

/** Refuses a write that another site's page sent. A program without a browser sends no Origin and is let through. */
export const onlyOwnPage: MiddlewareHandler = async (c, next) => {
  if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
  const origin = c.req.header('origin');
  const site = c.req.header('sec-fetch-site');
  const host = c.req.header('host') ?? new URL(c.req.url).host;
  const foreign =
    origin !== undefined
      ? !/^https?:\/\//.test(origin) || origin.replace(/^https?:\/\//, '') !== host
      : site !== undefined && site !== 'same-origin' && site !== 'none';
  if (!foreign) return next();
  return problem(c, 403, [
    {
      code: 'foreign page',
      message: `expected a write from the page of this server, got one from ${origin ?? site}`,
      remedy: 'open the address that the program printed, and write from there',
    },
  ]);
};

export const headers: MiddlewareHandler = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    fontSrc: ["'self'"],
    imgSrc: ["'self'", 'data:', 'blob:'],
    connectSrc: ["'self'"],
    manifestSrc: ["'self'"],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
  },
  crossOriginOpenerPolicy: 'same-origin',
  crossOriginResourcePolicy: 'same-origin',
  referrerPolicy: 'no-referrer',
  xContentTypeOptions: 'nosniff',
  xFrameOptions: 'DENY',
  strictTransportSecurity: false, // loopback has no TLS; where there is one, the front door says so
  permissionsPolicy: { geolocation: [], microphone: [], camera: ['self'] },
});

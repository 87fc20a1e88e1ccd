/** Who asks: this machine itself, a paired device, or nobody we know. */
import type { Context } from 'hono';
import { getCookie } from 'hono/cookie';
import { deviceOf, type PairedDevice, type Register } from '../app/index.ts';

export type Who =
  | { readonly is: 'this machine' }
  | { readonly is: 'device'; readonly device: PairedDevice }
  | { readonly is: 'nobody' };

/** What @hono/node-server hands in beside a request. */
type Incoming = {
  readonly incoming?: { readonly socket?: { readonly remoteAddress?: string; readonly encrypted?: boolean } };
};

/** A page on plain HTTP may not set the prefix that binds a cookie to its host (RFC 6265bis, `__Host-`). */
export const cookieName = (c: Context): string => (isSecure(c) ? '__Host-kartwright' : 'kartwright');
export const isSecure = (c: Context): boolean => (c.env as Incoming | undefined)?.incoming?.socket?.encrypted === true;

/** Of the other end of the line; '' where there is none, as in a test that hands requests in. */
export const addressOf = (c: Context): string => (c.env as Incoming | undefined)?.incoming?.socket?.remoteAddress ?? '';

const LOOPBACK_ADDRESS = /^(127\.\d+\.\d+\.\d+|::1|::ffff:127\.\d+\.\d+\.\d+)$/;
const LOOPBACK_HOST = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/i;
/** A proxy on this machine speaks from loopback for somebody elsewhere. Source: RFC 7239, RFC 9110 (Via), and usage. */
const PROXIED = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'];

/** Loopback needs no login; whatever came through a proxy, or asks for another name, is from outside. */
function isThisMachine(c: Context): boolean {
  return (
    LOOPBACK_ADDRESS.test(addressOf(c)) &&
    LOOPBACK_HOST.test(c.req.header('host') ?? '') &&
    PROXIED.every(name => c.req.header(name) === undefined)
  );
}

/** A program sends its token as `Authorization: Bearer`; a page cannot read its own, which is in a cookie. */
export function tokenOf(c: Context): string | undefined {
  const bearer = /^Bearer ([A-Za-z0-9_-]{20,100})$/.exec(c.req.header('authorization') ?? '')?.[1];
  return bearer ?? getCookie(c, cookieName(c));
}

export async function whoAsks(c: Context, register: Register, now: Date): Promise<Who> {
  const token = tokenOf(c);
  const device = token === undefined ? undefined : deviceOf(await register.read(), token, now);
  if (device) return { is: 'device', device };
  return isThisMachine(c) ? { is: 'this machine' } : { is: 'nobody' };
}

/** How a device comes in: a code that somebody on the laptop had shown, for a token in a cookie that no page can read. */
import type { Context, Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import {
  type App,
  enter,
  isFresh,
  type PairedDevice,
  type Register,
  withCode,
  withDevice,
  withoutPerson,
} from '../app/index.ts';
import { readDevice, readForget, readPair, readPairing } from './body.ts';
import { tooLarge } from './limit.ts';
import { notPaired, problem, refused, statusOf } from './problem.ts';
import { cookieName, isSecure, tokenOf, type Who } from './who.ts';

/** What cannot be guessed, from the machine. */
export type Secrets = { code(): string; token(): string; id(): string };

type Parts = {
  readonly register: Register;
  readonly secrets: Secrets;
  readonly now: () => Date;
  readonly bookOf: (team: string) => Promise<App>;
  readonly reached?: () => readonly string[];
};
type Door = Hono<{ Variables: { who: Who } }>;

/** As long as a pairing may last (register.ts), seconds. */
const COOKIE_S = 400 * 86_400;
const BODY_BYTES = 10_000;

export function addPairing(front: Door, { register, secrets, now, bookOf, reached = () => [] }: Parts): void {
  /** Who looks after devices, and of which teams: this machine of all, an owner of the own. */
  const keeper = (who: Who): ((team: string) => boolean) | undefined => {
    if (who.is === 'this machine') return () => true;
    return who.is === 'device' && who.device.role === 'owner' ? team => team === who.device.team : undefined;
  };

  /** A phone that was left lying about must not make an owner that stays when the phone is put out. */
  const isAsked = (who: Who): boolean =>
    who.is === 'this machine' || (who.is === 'device' && isFresh(who.device, now()));

  front.use('/api/pair', tooLarge(BODY_BYTES));
  front.use('/api/forget', tooLarge(BODY_BYTES));
  front.use('/api/devices/*', tooLarge(BODY_BYTES));
  front.post('/api/pair', async c => {
    const body = await readPair(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const [token, id] = [secrets.token(), secrets.id()];
    const before = tokenOf(c);
    const given = await register.change(state => enter(state, { ...body.value, token, id, before, now: now() }));
    if (!('token' in given)) return problem(c, 403, [given]);
    const secure = isSecure(c);
    setCookie(c, cookieName(c), token, { httpOnly: true, sameSite: 'Strict', path: '/', secure, maxAge: COOKIE_S });
    // A program has no use for a cookie, and asks for the token itself; a page of ours never does.
    return c.json({ ...shown(given), ...(body.value.bearer && { token }) }, 201);
  });

  front.get('/api/me', c => {
    const who = c.get('who');
    if (who.is === 'nobody') return notPaired(c);
    const lan = reached();
    if (who.is === 'this machine') return c.json({ is: who.is, role: 'owner', team: '', reached: lan });
    return c.json({ is: who.is, ...shown(who.device), reached: lan });
  });

  /**
   * This device leaves: its token is worth nothing from here on, wherever a copy of it may be. The cookie stays, so that with
   * a new code the same device goes on with the chains it wrote.
   */
  front.delete('/api/me', async c => {
    const who = c.get('who');
    if (who.is === 'device') await register.change(state => ({ state: revoked(state, who.device.id, now()), give: 0 }));
    return c.body(null, 204);
  });

  front.get('/api/devices', async c => {
    const may = keeper(c.get('who'));
    if (!may) return ownersOnly(c);
    const { devices } = await register.read();
    return c.json({ devices: devices.filter(one => may(one.team)).map(shown) });
  });

  front.post('/api/devices/pair', async c => {
    const may = keeper(c.get('who'));
    if (!may) return ownersOnly(c);
    const body = await readPairing(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const who = c.get('who');
    const { role, team = who.is === 'device' ? who.device.team : '' } = body.value;
    if (!may(team)) return ownersOnly(c);
    if (role === 'owner' && !isAsked(who)) return askAgain(c);
    const code = secrets.code();
    await register.change(state => ({ state: withCode(state, { code, role, team, now: now() }), give: undefined }));
    return c.json({ code, role, team, minutes: 10, reached: reached() }, 201);
  });

  /** Taken out of the team's book, and of the names of its devices. */
  front.post('/api/forget', async c => {
    const who = c.get('who');
    if (!keeper(who)) return ownersOnly(c);
    const body = await readForget(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const team = who.is === 'device' ? who.device.team : '';
    const book = await bookOf(team);
    const forgot = await (who.is === 'device' ? book.as(`paired-${who.device.id}`) : book).forget(body.value);
    if (forgot.kind === 'refused') return problem(c, statusOf(forgot.problems), forgot.problems);
    const out = { person: body.value.person, as: forgot.as };
    if (forgot.done) await register.change(state => ({ state: withoutPerson(state, team, out), give: undefined }));
    return c.json(forgot);
  });

  front.post('/api/devices/:id{[0-9a-f]{8}}', async c => {
    const may = keeper(c.get('who'));
    if (!may) return ownersOnly(c);
    const body = await readDevice(c);
    if (!body.ok) return problem(c, 422, body.problems);
    const { role, revoke } = body.value;
    const id = c.req.param('id');
    const found = (await register.read()).devices.find(one => one.id === id && may(one.team));
    if (!found)
      return problem(c, 404, [refused('device', `Expected a paired device, got ${id}.`, 'See the list of devices.')]);
    if (role === 'owner' && found.role !== 'owner' && !isAsked(c.get('who'))) return askAgain(c);
    const changed = await register.change(state => {
      const next = revoke
        ? revoked(state, id, now())
        : withDevice(state, id, one => ({ ...one, ...(role && { role }) }));
      return { state: next, give: next.devices.find(one => one.id === id) ?? found };
    });
    return c.json(shown(changed));
  });
}

const revoked = (state: Parameters<typeof withDevice>[0], id: string, now: Date) =>
  withDevice(state, id, one => ({ ...one, revoked: one.revoked ?? now.toISOString() }));

/** All of it but the token's hash. */
const shown = ({ token: _, ...rest }: PairedDevice): Omit<PairedDevice, 'token'> => rest;

function askAgain(c: Context): Response {
  const message = 'Expected an owner whose device was let in within the last 15 minutes, got one let in before.';
  const remedy =
    'Log this device out and let it in again with a code from the machine that keeps the book, or make the owner there.';
  return problem(c, 403, [{ code: 'not allowed', message, remedy }]);
}

function ownersOnly(c: Context<{ Variables: { who: Who } }>): Response {
  if (c.get('who').is === 'nobody') return notPaired(c);
  const message = 'Expected an owner, or the machine that serves, got another device.';
  return problem(c, 403, [{ code: 'not allowed', message, remedy: 'Ask an owner.' }]);
}

/** What a write must look like before the app sees it. The payloads themselves are judged by the app. */
import type { Context } from 'hono';
import { z } from 'zod';
import {
  type ForgetAsk,
  isTeam,
  type LooksWanted,
  type Problem,
  ROLES,
  type SecondWanted,
  type SessionSaid,
  type Signature,
  type Written,
} from '../app/index.ts';

const name = z.string().min(1).max(200);
const write = z.strictObject({
  payloads: z.array(z.record(z.string(), z.unknown())).min(1).max(500),
  by: name,
  at: z.string().max(40).optional(),
  sure: z.boolean().optional(),
});
const release = z.strictObject({
  signer: name,
  statement: z.string().max(4000).optional(),
  event: name.optional(),
  at: z.string().max(40).optional(),
  by: name.optional(),
  seen: z.array(z.string().max(500)).max(2000).optional(),
  sure: z.boolean().optional(),
});

const looks = z.strictObject({
  fact: name.optional(),
  of: name.optional(),
  all: z.boolean().optional(),
  by: name,
  at: z.string().max(40).optional(),
});

const times = z.strictObject({
  times: z.string().max(50_000),
  by: name,
  at: z.string().max(40).optional(),
  event: name.optional(),
  session: name.optional(),
  track: name.optional(),
  wet: z.boolean().optional(),
  conditions: z.string().max(4000).optional(),
  minutes: z.number().nonnegative().optional(),
  run: z.string().max(64).optional(),
  sure: z.boolean().optional(),
});

const second = z.strictObject({ joint: name, retention: name, by: name, at: z.string().max(40).optional() });

const pair = z.strictObject({
  code: z.string().min(1).max(20),
  name: z.string().trim().min(1).max(80),
  bearer: z.boolean().optional(),
});
const role = z.enum(ROLES);
const team = z.string().refine(isTeam, 'expected small letters, digits and hyphens, at most 40');
const pairing = z.strictObject({ role, team: team.optional() });
const device = z.strictObject({ role: role.optional(), revoke: z.literal(true).optional() });

const forget = z.strictObject({
  person: name,
  by: name,
  words: z.boolean().optional(),
  dryRun: z.boolean().optional(),
});
const since = z.strictObject({ numbers: z.record(name, z.number().int().nonnegative()) });
const kartText = z.strictObject({ text: z.string().max(2_000_000) });
const take = z.strictObject({ facts: z.array(z.unknown()).max(5000) });

type Body<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };
/** JSON has no undefined, so a key that is there has a value. */
type Given<T> = { [K in keyof T]: Exclude<T[K], undefined> };

export const readWrite = (c: Context): Promise<Body<Written & { payloads: readonly unknown[] }>> => read(c, write);
export const readRelease = (c: Context): Promise<Body<Signature>> => read(c, release);
export const readLooks = (c: Context): Promise<Body<LooksWanted>> => read(c, looks);
export const readSecond = (c: Context): Promise<Body<SecondWanted>> => read(c, second);

export const readPair = (c: Context): Promise<Body<z.infer<typeof pair>>> => read(c, pair);
export const readPairing = (c: Context): Promise<Body<z.infer<typeof pairing>>> => read(c, pairing);
export const readDevice = (c: Context): Promise<Body<z.infer<typeof device>>> => read(c, device);
export const readTimes = (c: Context): Promise<Body<SessionSaid & { readonly times: string }>> => read(c, times);
export const readForget = (c: Context): Promise<Body<ForgetAsk>> => read(c, forget);
export const readSince = (c: Context): Promise<Body<z.infer<typeof since>>> => read(c, since);
export const readKartText = (c: Context): Promise<Body<{ readonly text: string }>> => read(c, kartText);
export const readTake = (c: Context): Promise<Body<z.infer<typeof take>>> => read(c, take);

async function read<S extends z.ZodType>(c: Context, shape: S): Promise<Body<Given<z.infer<S>>>> {
  const type = c.req.header('content-type') ?? '';
  if (!/^application\/json\b/i.test(type))
    return wrong('content-type', `Expected application/json, got ${type || 'no type'}.`, 'Send JSON and say so.');
  let json: unknown;
  try {
    json = await c.req.json();
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return wrong('body', `Expected JSON, got text that is none: ${error.message}.`, 'Correct it and send it again.');
  }
  const found = shape.safeParse(json);
  if (found.success) return { ok: true, value: found.data as Given<z.infer<S>> };
  return {
    ok: false,
    problems: found.error.issues.map(issue => ({
      code: 'wrong shape',
      where: issue.path.join('.') || 'body',
      message: `${issue.path.join('.') || 'body'}: ${issue.message}.`,
      remedy: 'Correct it and send it again; nothing was recorded.',
    })),
  };
}

const wrong = (where: string, message: string, remedy: string) =>
  ({ ok: false, problems: [{ code: 'wrong shape', where, message, remedy }] }) as const;

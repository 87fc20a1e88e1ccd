/**
 * Which devices may come in from outside this machine, and as what. State of a server, no facts: a book that is copied must
 * not carry keys. Tokens and codes are kept as hashes only (SHA-256: both are random, so there is nothing to guess).
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { named } from './person.ts';
import { type Problem, refuse } from './problem.ts';

export const ROLES = ['owner', 'mechanic', 'driver', 'scrutineer'] as const;
export type Role = (typeof ROLES)[number];
/** '' is the book of this machine; any other has a book of its own, in a folder of this name, hence no more letters. */
const team = z.string().regex(/^([a-z0-9][a-z0-9-]{0,39})?$/);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const instant = z.iso.datetime({ precision: 3 });

const device = z.strictObject({
  id: z.string().regex(/^[0-9a-f]{8}$/),
  name: z.string().min(1).max(80),
  role: z.enum(ROLES),
  team,
  token: hash,
  paired: instant,
  seen: z.iso.date(), // UTC day
  revoked: instant.optional(),
  /** Names of devices in the book under which this one writes. */
  chains: z.array(z.string().min(1).max(200)).max(20),
});
const code = z.strictObject({ hash, role: z.enum(ROLES), team, until: instant });

/** How the register is written down; what does not read is refused, never guessed. */
export const registerShape = z.strictObject({
  register: z.literal(1),
  devices: z.array(device).max(1000),
  codes: z.array(code).max(100),
});
export type RegisterState = z.infer<typeof registerShape>;
export type PairedDevice = z.infer<typeof device>;
export const NOBODY: RegisterState = { register: 1, devices: [], codes: [] };

/** Where the register is kept. `change` is one step: two programs never overwrite each other. */
export interface Register {
  read(): Promise<RegisterState>;
  change<T>(step: (now: RegisterState) => { readonly state: RegisterState; readonly give: T }): Promise<T>;
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** Time to walk over to the phone. */
const CODE_MS = 10 * MINUTE_MS;
/** Who makes another owner has shown a code within this time. */
const FRESH_MS = 15 * MINUTE_MS;
/** A season and the winter: then a device is paired anew. One that lay in a drawer for three months as well. */
const MOST_DAYS = 400;
const IDLE_DAYS = 90;

/** Codes that somebody typed: capitals, and no sign that is mistaken for another. */
export const plainCode = (typed: string): string =>
  typed.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');
export const isTeam = (text: string): boolean => team.safeParse(text).success;

export type CodeFor = { readonly code: string; readonly role: Role; readonly team: string; readonly now: Date };

/** A code that lets one device in as `role`, once, within ten minutes. */
export function withCode(state: RegisterState, { code, role, team, now }: CodeFor): RegisterState {
  const until = new Date(now.getTime() + CODE_MS).toISOString();
  const open = state.codes.filter(one => one.until > now.toISOString()).slice(-20);
  return { ...state, codes: [...open, { hash: hashed(plainCode(code)), role, team, until }] };
}

export type Entering = {
  readonly code: string;
  readonly name: string;
  readonly id: string;
  readonly token: string;
  /** What the same device came in with before, if it did. */
  readonly before?: string | undefined;
  readonly now: Date;
};

/**
 * Lets a device in again under a new id, too: the token it had is worth nothing from then on, of whatever team. Within the
 * team it goes on writing the chains it wrote, so that what it could not send while it was put out still arrives.
 *
 * The code is used up by it. A wrong one changes nothing, and says no more than that. */
export function enter(
  state: RegisterState,
  { code, name, id, token, before, now }: Entering,
): { readonly state: RegisterState; readonly give: PairedDevice | Problem } {
  const at = now.toISOString();
  const wanted = hashed(plainCode(code));
  const found = state.codes.find(one => one.hash === wanted && one.until > at);
  if (found === undefined) return { state, give: WRONG_CODE };
  const old = before === undefined ? undefined : state.devices.find(one => one.token === hashed(before));
  const same = old?.team === found.team ? old : undefined;
  const device: PairedDevice = {
    id,
    name,
    role: found.role,
    team: found.team,
    token: hashed(token),
    paired: at,
    seen: at.slice(0, 10),
    chains: same?.chains ?? [],
  };
  const others = state.devices.map(one =>
    one === old ? { ...one, ...(same && { chains: [] }), revoked: one.revoked ?? at } : one,
  );
  return {
    state: { ...state, devices: [...others, device], codes: state.codes.filter(one => one !== found) },
    give: device,
  };
}

const WRONG_CODE = refuse(
  'not allowed',
  'code',
  'Expected a code that was made within the last ten minutes and not used yet, got another.',
  'Have a new one shown: on the laptop under Devices, or with kartwright devices pair.',
);

/** Whose token this is; undefined when nobody's, revoked, too old or too long unused. */
export function deviceOf(state: RegisterState, token: string, now: Date): PairedDevice | undefined {
  const wanted = hashed(token);
  const found = state.devices.find(one => one.token === wanted);
  if (found === undefined || found.revoked !== undefined) return undefined;
  const age = now.getTime() - Date.parse(found.paired);
  const idle = now.getTime() - Date.parse(found.seen);
  return age < MOST_DAYS * DAY_MS && idle < (IDLE_DAYS + 1) * DAY_MS ? found : undefined;
}

/** Was this device let in just now? Pairing is the only login there is, so this is what asking again can rest on. */
export const isFresh = ({ paired }: PairedDevice, now: Date): boolean => now.getTime() - Date.parse(paired) < FRESH_MS;

/** Changes one device; the same state when there is none of this id. */
export const withDevice = (
  state: RegisterState,
  id: string,
  change: (device: PairedDevice) => PairedDevice,
): RegisterState => ({ ...state, devices: state.devices.map(one => (one.id === id ? change(one) : one)) });

/** Devices of a team that are called after a person are called otherwise from now on. */
export function withoutPerson(
  state: RegisterState,
  team: string,
  { person, as }: { readonly person: string; readonly as: string },
): RegisterState {
  const who = named(person);
  const devices = state.devices.map(one =>
    one.team === team && who && (who.is(one.name) || who.places(one.name).length > 0)
      ? { ...one, name: `device of ${as}` }
      : one,
  );
  return { ...state, devices };
}

/** A chain belongs to the device that wrote into it first; one that is `there` in the book already, to who wrote it. */
export function withChain(
  state: RegisterState,
  id: string,
  { chain, there }: { readonly chain: string; readonly there: boolean },
): { readonly state: RegisterState; readonly give: boolean } {
  const holder = state.devices.find(one => one.chains.includes(chain));
  if (holder !== undefined) return { state, give: holder.id === id };
  const mine = state.devices.find(one => one.id === id);
  if (there || mine === undefined || mine.chains.length >= 20) return { state, give: false };
  return { state: withDevice(state, id, one => ({ ...one, chains: [...one.chains, chain] })), give: true };
}

const hashed = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** What the page asks of the server about devices; refusals are values. */
import type { Forgot, Problem, Role } from '../../app/index.ts';
import { strangerWords } from '../words/stranger.ts';

export type Paired = {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly team: string;
  readonly paired: string;
  readonly seen: string;
  readonly revoked?: string;
  readonly chains: readonly string[];
};
export type Code = { readonly code: string; readonly role: Role; readonly reached: readonly string[] };
export type Me = {
  readonly is: 'this machine' | 'device';
  readonly role: Role;
  readonly reached: readonly string[];
  readonly id?: string;
};
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const me = () => ask<Me>('GET', '/api/me');
export const pairedDevices = () => ask<{ readonly devices: readonly Paired[] }>('GET', '/api/devices');
export const newCode = (role: Role) => ask<Code>('POST', '/api/devices/pair', { role });
export const change = (id: string, what: { role?: Role; revoke?: true }) =>
  ask<Paired>('POST', `/api/devices/${id}`, what);
export const leave = () => ask<object>('DELETE', '/api/me');
export const comeIn = (code: string, name: string) => ask<Paired>('POST', '/api/pair', { code, name });

export type Gone = Extract<Forgot, { kind: 'forgotten' }>;
export const forget = (what: { person: string; by: string; words: boolean; dryRun: boolean }) =>
  ask<Gone>('POST', '/api/forget', what);

/** Calls back when the server does not know this device; a server out of reach says nothing of it. */
export async function ifStranger(then: () => void): Promise<void> {
  const status = await fetch('/api/me').then(
    answer => answer.status,
    () => 0,
  );
  if (status === 401) then();
}

async function ask<T>(method: string, url: string, body?: unknown): Promise<Answer<T>> {
  try {
    const answer = await fetch(url, {
      method,
      ...(body !== undefined && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    const said = (await answer.json().catch(() => ({}))) as T & { readonly problems?: readonly Problem[] };
    if (answer.ok) return { ok: true, value: said };
    return { ok: false, problems: said.problems ?? [unclear(strangerWords.itAnswered(answer.status))] };
  } catch {
    return { ok: false, problems: [unclear(strangerWords.itDoesNotAnswer)] };
  }
}

const unclear = (what: string): Problem => ({
  code: 'book',
  where: 'server',
  message: strangerWords.expectedAnswerOfServer(what),
  remedy: strangerWords.seeThatItRuns,
});

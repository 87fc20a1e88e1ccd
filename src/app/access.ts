/** What a device from outside may do: the same app, which writes under the device's own name and refuses what its role may not. */
import { FACT_KINDS, type Fact, type FactKind } from '../book/index.ts';
import type { App } from './app.ts';
import { type Problem, Refusal, refuse } from './problem.ts';
import type { Role } from './register.ts';

/** Reading is open to every role within its team; this is what each may write. */
export const WRITES: Readonly<Record<Role, readonly FactKind[]>> = {
  owner: FACT_KINDS,
  mechanic: FACT_KINDS.filter(kind => kind !== 'redacted'),
  driver: [
    'event',
    'ran',
    'laps',
    'found',
    'failed',
    'look asked',
    'tyres',
    'fuel mixed',
    'fuel used',
    'weather',
    'plug read',
    'treads probed',
    'note',
    'struck',
  ],
  scrutineer: ['released'],
};

export type Visitor = {
  readonly role: Role;
  /** Under which name what it writes through this server stands in the book. */
  readonly chain: string;
  /** Makes a chain its own; false when it is another's, or somebody's whose facts are `there` already. */
  claim(chain: string, there: boolean): Promise<boolean>;
};

/** Every way to write is here, so that a new route cannot forget to ask. */
export function appFor(app: App, visitor: Visitor): App {
  const own = app.as(visitor.chain);
  const may = (kinds: readonly unknown[]): void => {
    const wrong = kinds.find(kind => !(WRITES[visitor.role] as readonly unknown[]).includes(kind));
    if (wrong !== undefined) throw new Refusal([notAllowed(visitor.role, String(wrong))]);
  };
  const kindsOf = (payloads: readonly unknown[]): readonly unknown[] =>
    payloads.map(one => (one as { kind?: unknown } | null)?.kind ?? 'nothing');
  return {
    ...own,
    as: () => appFor(app, visitor),
    async record(kart, payloads, ask, file) {
      may(kindsOf(payloads));
      await mayStrike(app, visitor, payloads);
      return own.record(kart, payloads, ask, file);
    },
    async fileKart(text, ask) {
      may(['kart filed']);
      return own.fileKart(text, ask);
    },
    async importLaps(kart, log, said) {
      may(['ran', 'laps']);
      return own.importLaps(kart, log, said);
    },
    async lapsByHand(kart, times, said) {
      may(['ran', 'laps']);
      return own.lapsByHand(kart, times, said);
    },
    async release(kart, sign) {
      may(['released']);
      return own.release(kart, sign);
    },
    async forget(ask) {
      may(['redacted']);
      return own.forget(ask);
    },
    async putFile(bytes, mediaType) {
      may(['found']);
      return own.putFile(bytes, mediaType);
    },
    async importBook(text) {
      if (visitor.role !== 'owner') throw new Refusal([notAllowed(visitor.role, 'a whole book')]);
      return own.importBook(text);
    },
    async seedDemo() {
      throw new Refusal([notAllowed(visitor.role, 'a demo')]);
    },
    async take(raw) {
      const problem = visitor.role === 'owner' ? undefined : await strange(app, visitor, raw);
      return problem ? { kind: 'refused', problems: [problem] } : own.take(raw);
    },
    close: async () => undefined, // the book is the server's
  };
}

/** A role that may not write a fact may not take it away either. */
async function mayStrike(app: App, { role }: Visitor, payloads: readonly unknown[]): Promise<void> {
  if (WRITES[role] === FACT_KINDS) return;
  for (const one of payloads as readonly { kind?: unknown; fact?: unknown }[]) {
    if (one.kind !== 'struck' || typeof one.fact !== 'string') continue;
    const kind = await app.kindOf(one.fact);
    if (kind !== undefined && !WRITES[role].includes(kind))
      throw new Refusal([notAllowed(role, `a strike of ${kind}`)]);
  }
}

/** What is new to the book must be of a kind the role may write, and of a chain that nobody else writes. */
async function strange(app: App, visitor: Visitor, raw: readonly unknown[]): Promise<Problem | undefined> {
  const ends = await app.ends();
  for (const one of raw as readonly Partial<Fact>[]) {
    const chain = typeof one?.device === 'string' ? one.device : '';
    const end = Object.hasOwn(ends, chain) ? ends[chain] : undefined;
    if (end !== undefined && typeof one.seq === 'number' && one.seq <= end.seq) continue;
    if (!(WRITES[visitor.role] as readonly unknown[]).includes(one?.kind))
      return notAllowed(visitor.role, String(one?.kind));
    try {
      await mayStrike(app, visitor, [one]);
    } catch (error) {
      if (error instanceof Refusal) return error.problems[0];
      throw error;
    }
    const mine = chain !== '' && (await visitor.claim(chain, end !== undefined));
    if (!mine)
      return refuse(
        'not allowed',
        `device ${chain}`,
        `Expected facts of the device that sends them, got facts of ${chain || 'none'}.`,
        'Let that device send them itself, or an owner.',
      );
  }
  return undefined;
}

const notAllowed = (role: Role, what: string): Problem =>
  refuse(
    'not allowed',
    'role',
    `Expected something that a ${role} may write, got ${what}.`,
    'Ask an owner to do it, or for another role: kartwright devices role.',
  );

/**
 * The talk after something failed, in a terminal: what, where, after how long, what it did, what would have held it. Asks only for
 * what was not given, offers what the record knows, and takes an empty line for what nobody knows.
 */
import { type Fact, partAge, type State } from '../book/index.ts';
import { CORNERS, type Kart, suggest } from '../kart/index.ts';
import { parseQuantity } from '../quantity/index.ts';

/** Puts a question and gives what was typed. */
export type Ask = (question: string) => Promise<string>;
export type Talk = { readonly kart: Kart; readonly state: State; readonly facts: readonly Fact[] };
type Said = Readonly<Record<string, unknown>>;

/** @param given keys of the fact that were typed already */
export async function talkOfFailure(ask: Ask, { kart, state, facts }: Talk, given: Said): Promise<Said> {
  const said: Record<string, unknown> = { ...given };
  const put = async (key: string, question: () => Promise<unknown>): Promise<void> => {
    if (said[key] !== undefined) return;
    const value = await question();
    if (value !== undefined) said[key] = value;
  };
  await put('part', () => partOf(ask, kart));
  const part = kart.parts[String(said.part)];
  const joints = part?.joints ?? [];
  if (joints.length > 0)
    await put('joint', async () => {
      const names = joints.map(id => kart.joints[id]?.name ?? id);
      const at = await oneOf(ask, 'Did a joint of it let go? Its number; empty: the part itself failed', names);
      return at === undefined ? undefined : joints[at];
    });
  await put('how', () => until(ask, 'What was seen? "pin gone, clip on the floor": ', text => text || undefined));
  const last = facts.findLast(fact => fact.kind === 'ran' && state.struck[fact.id] === undefined);
  const run = last?.kind === 'ran' ? last : undefined;
  await put('event', offered(ask, 'At which event?', run?.event));
  await put('session', offered(ask, 'In which session?', run?.session));
  await put('lap', () => until(ask, 'On which lap? Empty: not known: ', text => (text === '' ? null : wholeOf(text))));
  const { minutes } = partAge(state, String(said.part));
  await put('afterMinutes', () =>
    until(ask, `How long had it run? Empty: as on record, ${(minutes / 60).toFixed(1)} h; else like 6.5 h: `, text => {
      if (text === '') return null;
      const read = parseQuantity(text, 'time');
      return read.ok ? read.value.si / 60 : undefined;
    }),
  );
  const functions = Object.keys(kart.functions);
  if (functions.length > 0)
    await put('lost', () => someOf(ask, 'What was lost with it? Numbers; empty: nothing', functions));
  await put('stopped', async () => (/^y/i.test((await ask('Did it stop the kart? y/n: ')).trim()) ? true : undefined));
  await put('impact', () => impactOf(ask));
  await put(
    'wouldHaveHeld',
    async () => (await ask('What would have held it? Empty: not known: ')).trim() || undefined,
  );
  return Object.fromEntries(Object.entries(said).filter(([, value]) => value !== null));
}

/** Asks again until what came can be read; null is "nothing", undefined "not understood". */
async function until<T>(ask: Ask, question: string, read: (text: string) => T | null | undefined): Promise<T | null> {
  for (;;) {
    const value = read((await ask(question)).trim());
    if (value !== undefined) return value;
  }
}

async function partOf(ask: Ask, kart: Kart): Promise<string> {
  for (let hint = ''; ; ) {
    const text = (await ask(`Which part failed?${hint} `)).trim();
    if (kart.parts[text]) return text;
    const near = suggest(text, Object.keys(kart.parts));
    hint = near === undefined ? ' Its name in the kart file:' : ` Did you mean "${near}"?`;
  }
}

const offered = (ask: Ask, question: string, known: string | undefined) => async (): Promise<string | undefined> =>
  (await ask(known === undefined ? `${question} Empty: not known: ` : `${question} Empty: ${known}: `)).trim() || known;

const wholeOf = (text: string): number | undefined => (/^[1-9]\d{0,3}$/.test(text) ? Number(text) : undefined);

const listed = (names: readonly string[]): string => names.map((name, n) => `  ${n + 1} ${name}\n`).join('');

const oneOf = async (ask: Ask, question: string, names: readonly string[]): Promise<number | undefined> => {
  const found = await until(ask, `${question}\n${listed(names)}: `, text => {
    if (text === '') return null;
    const n = wholeOf(text);
    return n !== undefined && n <= names.length ? n - 1 : undefined;
  });
  return found ?? undefined;
};

const someOf = async (ask: Ask, question: string, names: readonly string[]): Promise<readonly string[] | undefined> => {
  const found = await until(ask, `${question}\n${listed(names)}: `, text => {
    if (text === '') return null;
    const picked = text.split(/[\s,]+/).map(word => names[(wholeOf(word) ?? 0) - 1]);
    return picked.every(name => name !== undefined) ? picked : undefined;
  });
  return (found ?? undefined) as readonly string[] | undefined;
};

async function impactOf(ask: Ask): Promise<unknown> {
  const found = await until(ask, 'Was it hit? Like "rear left, knock" (knock, hit, crash); empty: no: ', text => {
    if (text === '') return null;
    const [corner = '', severity = ''] = text.split(',').map(word => word.trim());
    const known = (CORNERS as readonly string[]).includes(corner) && ['knock', 'hit', 'crash'].includes(severity);
    return known ? { corner, severity } : undefined;
  });
  return found ?? undefined;
}

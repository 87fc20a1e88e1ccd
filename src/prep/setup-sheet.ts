/** The set-up sheet: the kart's settings as the record has them, what differs from the baseline or a past session, and hints. */
import { type Fact, type FactOf, fold, type State } from '../book/index.ts';
import type { Item, ItemId, Kart, PartId } from '../kart/index.ts';
import { type Change, changeOf, toeSaid } from './setting-value.ts';
import type { SetupEffect, SetupEffects } from './setup-effects.ts';
import { counted, type Observed, type Outing, observed, outingOf } from './setup-history.ts';

export type Setting = {
  readonly name: string; // 'caster', 'rear track, rear hub left'
  readonly part: PartId | null; // what it was read on, where the name does not say it
  readonly value: string; // as it was written or read
  readonly from: 'set-up' | 'reading';
  readonly item: ItemId | null;
  readonly at: string;
  readonly by: string;
  readonly fact: string;
};

export type Difference = Change & {
  readonly name: string;
  readonly part: PartId | null;
  readonly was: string | null;
  readonly now: string | null;
};

/** `opposite`: nothing is said of the change that was made, but this is said of the other way. `for`: the setting's name. */
export type Hint = SetupEffect & { readonly for: string; readonly opposite: boolean };

export type SetupSheet = {
  readonly kart: string;
  readonly invented: boolean;
  readonly at: string | null; // of the newest fact it rests on
  readonly about: string | null; // the one setting asked about
  readonly settings: readonly Setting[];
  readonly tyres: string | null;
  /** What the differences are counted from; null when no set-up was ever written down. */
  readonly against: Moment | null;
  readonly differences: readonly Difference[];
  /** What the changes from there to here are said to do; with `about`, all that is said of that setting. */
  readonly hints: readonly Hint[];
  readonly note: string | null; // what all hints have in common
  /** This kart's own changes of the settings that differ, or of `about`. */
  readonly observed: readonly Observed[];
  readonly sessions: readonly Outing[]; // that it can be held against, oldest first
};

/** A past moment with its name: 'baseline', a session, a time. */
export type Moment = { readonly label: string; readonly at: string };

export type SheetAsk = {
  readonly against?: Moment; // the baseline when left out
  readonly about?: string; // one setting
  readonly effects?: SetupEffects;
};

/** @param facts of this kart alone, up to the moment asked about; struck ones and their strikes may be among them */
export function setupSheet(kart: Kart, facts: readonly Fact[], { against, about, effects }: SheetAsk = {}): SetupSheet {
  const known = counted(facts);
  const state = fold(facts);
  const settings = settingsOf(kart, state);
  const from = against ?? baseline(known);
  const then = from === null ? [] : settingsOf(kart, fold(known.filter(fact => fact.at <= from.at)));
  const differences = from === null ? [] : differencesOf(then, settings);
  const of = (name: string): boolean =>
    about === undefined ? differences.some(one => same(one.name, name)) : same(about, name);
  return {
    kart: kart.name,
    invented: kart.invented,
    at: state.last?.at ?? null,
    about: about ?? null,
    settings,
    tyres: state.tyres?.set ?? null,
    against: from,
    differences,
    hints: about === undefined ? hintsFor(differences, effects) : saidOf(about, effects),
    note: effects?.note ?? null,
    observed: observed(facts).filter(({ setting }) => of(setting)),
    sessions: known.flatMap(fact => (fact.kind === 'ran' ? [outingOf(fact)] : [])),
  };
}

/**
 * The set-up that the record calls a base (`baseline`, `base` in its reason), the newest of them; else the first one
 * written down. Null when there is none.
 */
export function baseline(known: readonly Fact[]): Moment | null {
  const sets = known.filter((fact): fact is FactOf<'set-up'> => fact.kind === 'set-up');
  const named = sets.findLast(({ why }) => /\bbase(line)?\b/i.test(why ?? ''));
  const chosen = named ?? sets[0];
  if (chosen === undefined) return null;
  return { label: named ? `baseline (${named.why})` : 'the first set-up written down', at: chosen.at };
}

/** Settings written down and settings read off the kart; where both go by one name, the newer. */
export function settingsOf(kart: Kart, state: State): readonly Setting[] {
  const found = new Map<string, Setting & { readonly pos: number }>();
  const keep = (one: Setting & { readonly pos: number }): void => {
    const key = one.name.toLowerCase();
    const there = found.get(key);
    if (there === undefined || one.pos > there.pos) found.set(key, one);
  };
  for (const [name, { value, at, by, fact, pos }] of Object.entries(state.settings))
    keep({ name, part: null, value: spelled(value), from: 'set-up', item: null, at, by, fact, pos });
  const items = Object.values(kart.items).filter(isSetting);
  for (const item of items) {
    const last = state.items[item.id]?.readings.at(-1);
    if (last === undefined) continue;
    const { at, by, fact, pos } = last;
    const read = spelled(last.reading.text);
    const value = item.measure?.number === 'toe' ? toeSaid(read) : read;
    keep({ ...namesOf(item, items), value, from: 'reading', item: item.id, at, by, fact, pos });
  }
  return [...found.values()].map(({ pos: _, ...setting }) => setting).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** As what is read or set there is called among the settings. */
export function settingName({ items }: Kart, id: ItemId): string {
  const item = items[id];
  return item === undefined ? id : namesOf(item, Object.values(items).filter(isSetting)).name;
}

/** Measured to set the kart up, not to see what is worn or tight: it has a dimension or a number, is set, or is there for the lap time. */
function isSetting({ measure, joint, action, grade, when }: Item): boolean {
  if (measure === undefined || joint !== undefined || action === 'function-test') return false;
  if (when.some(({ on }) => on === 'after session')) return false; // what a run did to it, not how it was set
  if (measure.number !== undefined) return !WEAR.has(measure.number);
  return measure.dimension !== undefined || action === 'set' || grade === 'performance';
}
/** Numbers of how the engine lasts, not of how the kart is set up. */
const WEAR: ReadonlySet<string> = new Set(['compression-trend', 'least-squish']);

/** The item's key, with its part in it where several parts have one. What is measured twice on a part is one setting. */
function namesOf(item: Item, among: readonly Item[]): Pick<Setting, 'name' | 'part'> {
  const { key } = among.find(other => other.part === item.part && sameNumber(other, item)) ?? item;
  const several = among.some(other => other.part !== item.part && other.key === key);
  return several ? { name: `${key}, ${item.part}`, part: null } : { name: key, part: item.part };
}

const sameNumber = (a: Item, b: Item): boolean =>
  a.measure?.number !== undefined && a.measure.number === b.measure?.number;

/** `18 °` and `18°` are one spelling. */
const spelled = (value: string): string => value.trim().replace(/(\d)\s+°(?![CF])/g, '$1°');

function differencesOf(then: readonly Setting[], now: readonly Setting[]): readonly Difference[] {
  const names = [...new Set([...then, ...now].map(({ name }) => name))].sort();
  return names.flatMap(name => {
    const [was, is] = [then, now].map(list => list.find(one => same(one.name, name)));
    const change = changeOf(was?.value, is?.value);
    if (change === undefined) return [];
    return [{ name, part: (is ?? was)?.part ?? null, was: was?.value ?? null, now: is?.value ?? null, ...change }];
  });
}

/** What is said of the changes made; a setting that was not written down before, or is not now, was not changed by anybody. */
const hintsFor = (differences: readonly Difference[], effects: SetupEffects | undefined): readonly Hint[] =>
  differences.flatMap(({ name, way, was, now }) => {
    if (was === null || now === null) return [];
    const said = saidOf(name, effects);
    const fitting = said.filter(hint => way === 'other' || hint.way === way || !DIRECTIONS.has(hint.way));
    return fitting.length > 0 ? fitting : said.map(hint => ({ ...hint, opposite: true }));
  });

const DIRECTIONS = new Set(['more', 'less']);

const saidOf = (name: string, effects: SetupEffects | undefined): readonly Hint[] =>
  (effects?.effects ?? []).flatMap(effect =>
    effect.settings.some(setting => same(setting, bare(name))) ? [{ ...effect, for: name, opposite: false }] : [],
  );

const bare = (name: string): string => name.split(',')[0] ?? name;
const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The set-up sheet of a kart at one moment, against its baseline, a past session or a past moment. */
import { type Moment, type Outing, readSetupEffects, type SetupSheet, setupSheet } from '../prep/index.ts';
import { type At, given } from './asking.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import { moment } from './when.ts';
import { suggestion } from './words.ts';

export type SheetQuestion = At & {
  /** What to hold it against: a session as the record names it, a moment, or `baseline`, which it is when left out. */
  readonly against?: string;
  /** One setting: all that is said of it, and every change of it on this kart. */
  readonly about?: string;
};

/** Throws `Refusal` for a kart, a moment or a session that the book does not hold. `effects`: text of the hints file. */
export async function sheetOf(
  queries: Queries,
  kart: string,
  { against, about, ...at }: SheetQuestion,
  effects?: string,
): Promise<SetupSheet> {
  const facts = (await queries.facts(kart, at)).map(line => line.fact);
  const of = await queries.kart(kart, at);
  const said = effects === undefined ? undefined : readSetupEffects(effects);
  const plain = setupSheet(of, facts, given({ about, effects: said }));
  if (about !== undefined) mustBeKnown(about, plain);
  if (against === undefined || against === 'baseline') return plain;
  return setupSheet(of, facts, { against: pastOf(against, plain.sessions), ...given({ about, effects: said }) });
}

/** The newest session that goes by the name, or by its last part; else a moment. */
function pastOf(name: string, sessions: readonly Outing[]): Moment {
  const wanted = name.trim().toLowerCase();
  const found = sessions.findLast(
    ({ label }) => label.toLowerCase() === wanted || label.toLowerCase().split(' › ').includes(wanted),
  );
  if (found) return { label: found.label, at: found.at };
  const at = moment(name);
  if (at !== undefined) return { label: at, at };
  const known = [...new Set(sessions.map(({ label }) => label))];
  throw new Refusal([
    refuse(
      'unknown event',
      'against',
      `Expected a session of the record, a moment, or "baseline", got "${name}".`,
      known.length === 0
        ? 'Nothing has run yet: leave it out.'
        : `The last sessions: ${known.slice(-5).join(', ')}.${suggestion(name, known)}`,
    ),
  ]);
}

function mustBeKnown(about: string, { settings, hints, observed }: SetupSheet): void {
  const names = settings.map(({ name }) => name);
  if (hints.length > 0 || observed.length > 0) return;
  if (names.some(name => name.toLowerCase() === about.trim().toLowerCase())) return;
  throw new Refusal([
    refuse(
      'wrong shape',
      'about',
      `Expected a setting of this kart, got "${about}".`,
      names.length === 0
        ? 'Write the settings down first, as a fact of kind set-up.'
        : `Settings: ${names.join(', ')}.${suggestion(about, names)}`,
    ),
  ]);
}

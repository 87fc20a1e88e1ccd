/** The first answers about a kart as the facts they are: its file, the event that comes, what was new at its last rebuild. */
import { type Kart, type LibraryTexts, newKartFile, type PartId, replacesPart } from '../kart/index.ts';
import type { App } from './app.ts';
import { fromKartFile, type Problem, refuse } from './problem.ts';
import { type Recorded, refused, type Written } from './record.ts';
import { moment } from './when.ts';

export type Beginning = {
  readonly template: string;
  readonly name: string;
  /** Left out: none is known yet. */
  readonly event?: { readonly event: string; readonly from: string; readonly minutes: number };
  /** Left out: not known, so everything that lapses by hours is due. */
  readonly rebuilt?: { readonly hours: number; readonly parts: readonly PartId[] };
};

const LONGEST_NAME = 90;
/** An engine is opened long before; a slip of minutes for hours is not. Common practice. */
const MOST_HOURS = 100;
/** Round the clock once: longer than any event of one kart. */
const MOST_MINUTES = 1440;
/** As an event without an end lasts (SPEC B20). */
const DAY_OUT_MS = 12 * 3_600_000;

/** Writes all of it in one batch, or nothing; every problem at once. */
export async function beginKart(
  app: Pick<App, 'karts' | 'record'>,
  library: LibraryTexts,
  said: Beginning,
  { now, ...ask }: Written & { readonly now: Date },
): Promise<Recorded> {
  const name = said.name.trim();
  const taken = (await app.karts()).map(kart => kart.name);
  const made = newKartFile(said.template, name, { kinds: {}, rules: {}, templates: library.templates });
  const problems = [
    ...(made.ok ? [] : made.problems.map(one => fromKartFile(one, 'template'))),
    ...beginningProblems(said, { taken, now, sure: ask.sure === true }),
  ];
  if (!made.ok || problems.length > 0) return refused(...problems);
  const event = said.event === undefined ? [] : [{ kind: 'event', ...said.event, event: said.event.event.trim() }];
  return app.record(name, [{ kind: 'kart filed', text: made.text }, ...event, ...rebuildFacts(said.rebuilt)], ask);
}

/** What stands against the answers, but for the template; `where` names the field. */
export function beginningProblems(
  { name, event, rebuilt }: Pick<Beginning, 'name' | 'event' | 'rebuilt'>,
  { taken, now, sure }: { readonly taken: readonly string[]; readonly now: Date; readonly sure: boolean },
): readonly Problem[] {
  return [...nameProblems(name.trim(), taken), ...eventProblems(event, now, sure), ...rebuildProblems(rebuilt, sure)];
}

/** What a rebuild puts in new: parts that are replaced by their hours alone. */
export function wornByHours(kart: Kart): readonly { readonly part: PartId; readonly title: string }[] {
  return Object.values(kart.items).flatMap(item => {
    const { part, title, action, when } = item;
    const byUse = when.every(({ on }) => on === 'hours' || on === 'laps' || on === 'days');
    const isNew = replacesPart(item) || kart.parts[part]?.removable === false;
    return action === 'replace' && byUse && isNew && when.some(({ on }) => on === 'hours') ? [{ part, title }] : [];
  });
}

function rebuildFacts(rebuilt: Beginning['rebuilt']): readonly object[] {
  if (rebuilt === undefined) return [];
  const { hours, parts } = rebuilt;
  if (parts.length === 0)
    return [{ kind: 'note', text: `${hours} h since the last rebuild; what was new then was not said.` }];
  const carriedMinutes = Math.round(hours * 60);
  return parts.map(part => ({ kind: 'fitted', part, fresh: true, carriedMinutes }));
}

function nameProblems(name: string, taken: readonly string[]): readonly Problem[] {
  if (name === '')
    return [refuse('wrong shape', 'name', 'Expected a name for the kart, got none.', 'Its number will do: 41.')];
  if (name.length > LONGEST_NAME)
    return [
      refuse(
        'wrong shape',
        'name',
        `Expected a name of at most ${LONGEST_NAME} letters, got ${name.length}.`,
        'Its number will do: 41.',
      ),
    ];
  if (!taken.includes(name)) return [];
  return [
    refuse(
      'wrong shape',
      'name',
      `Expected a name that no kart of this book has, and there is a kart "${name}".`,
      'Give this one another name, or open that one at the top of the page.',
    ),
  ];
}

function eventProblems(event: Beginning['event'], now: Date, sure: boolean): readonly Problem[] {
  if (event === undefined) return [];
  const { event: name, from, minutes } = event;
  const problems: Problem[] = [];
  if (name.trim() === '')
    problems.push(
      refuse('wrong shape', 'event', 'Expected a name for the event, got none.', 'The day or the club will do.'),
    );
  const begins = moment(from);
  if (begins === undefined)
    problems.push(refuse('not a time', 'from', `Expected a day, got "${from}".`, 'Choose the day of the event.'));
  else if (Date.parse(begins) + DAY_OUT_MS < now.getTime())
    problems.push(
      refuse(
        'not a time',
        'from',
        `Expected a day that is still to come, got ${begins.slice(0, 10)}, which is past.`,
        'Choose the day of the next event, or say that there is none yet.',
      ),
    );
  if (!(minutes > 0))
    problems.push(
      refuse(
        'wrong shape',
        'minutes',
        `Expected running of more than 0 min, got ${minutes} min.`,
        'Add up its sessions, or leave it empty if you do not know.',
      ),
    );
  else if (minutes > MOST_MINUTES && !sure)
    problems.push(
      refuse(
        'far outside',
        'minutes',
        `Expected at most ${MOST_MINUTES} min of running in one event, got ${minutes} min.`,
        'Add up its sessions; if it is so, say it once more.',
      ),
    );
  return problems;
}

function rebuildProblems(rebuilt: Beginning['rebuilt'], sure: boolean): readonly Problem[] {
  if (rebuilt === undefined) return [];
  const { hours } = rebuilt;
  if (!(hours >= 0))
    return [
      refuse(
        'wrong shape',
        'hours',
        `Expected hours of 0 or more, got ${hours} h.`,
        'Read the hour meter, or say that you do not know.',
      ),
    ];
  if (hours <= MOST_HOURS || sure) return [];
  return [
    refuse(
      'far outside',
      'hours',
      `Expected at most ${MOST_HOURS} h since a rebuild, got ${hours} h.`,
      'Hours of running, not of days; if it is so, say it once more.',
    ),
  ];
}

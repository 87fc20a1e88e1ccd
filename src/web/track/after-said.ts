/** After a session: from what was typed and tapped to the facts it is, and from a refusal back to its field. */
import type { Problem } from '../../app/index.ts';
import { TYRES, type Tyre } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { type AfterSaid, afterSession, type PressuresSaid, type TrackDraft } from '../../prep/index.ts';
import { withUnit } from '../answer.ts';
import { ownUnitOf } from '../choice/choice.ts';
import { trackWords } from '../words/track.tsx';
import type { Draft } from '../written.ts';
import { isProblem, lapsSaid, type Measured, numberSaid, problemAt, type Said, said, type Typed } from './said.ts';

export const AFTER: Readonly<Record<'minutes' | 'litres' | 'meterHours', Measured>> = {
  minutes: { key: 'minutes', label: trackWords.minutesEngineRan, unit: 'min', dimension: 'time' },
  litres: { key: 'litres', label: trackWords.fuelUsedFilledInLess, unit: 'l', dimension: 'volume' },
  meterHours: { key: 'meterHours', label: trackWords.hourMeterReadsNow, unit: 'h', dimension: 'time' },
};
export const PLACES = ['inside', 'middle', 'outside'] as const;
export const hotKey = (tyre: Tyre): string => `hot ${tyre}`;
export const treadKey = (tyre: Tyre, place: string): string => `tread ${tyre} ${place}`;
const tread = (tyre: Tyre, place: string): Measured => ({
  key: treadKey(tyre, place),
  label: trackWords.tread(tyre, place),
  unit: '°C',
  dimension: 'temperature',
});

/** The run and everything read after it. `track` is where the event says it is. */
export function afterSaid(kart: Kart, typed: Typed, track: string | undefined): Said<readonly TrackDraft[]> {
  const read = {
    minutes: numberSaid(typed, AFTER.minutes),
    laps: lapsSaid(typed),
    litres: numberSaid(typed, AFTER.litres),
    meterHours: numberSaid(typed, AFTER.meterHours),
  };
  const treads = treadsSaid(typed);
  const problems = [...Object.values(read).filter(isProblem), ...(treads.ok ? [] : treads.problems)];
  if (read.minutes === undefined)
    problems.push(problemAt('minutes', AFTER.minutes.label, 'nothing', trackWords.pressOrType));
  for (const key of ['minutes', 'litres', 'meterHours'] as const) {
    const value = read[key];
    if (typeof value === 'number' && value < 0)
      problems.push(problemAt(key, AFTER[key].label, `${value}`, trackWords.itIsNotBelowNothing));
  }
  if (typed.severity && !typed.corner)
    problems.push(problemAt('corner', trackWords.hitWhere, 'nothing', trackWords.chooseCorner));
  if (problems.length > 0 || !treads.ok) return { ok: false, problems };
  const { minutes, laps, litres, meterHours } = read as Readonly<Record<keyof typeof read, number>>;
  const after: AfterSaid = {
    ran: {
      minutes,
      ...said({ laps, meterHours, track, event: word(typed.event), session: word(typed.session) }),
      ...(typed.wet ? { wet: true } : {}),
      ...(typed.severity && {
        impact: { corner: typed.corner, severity: typed.severity } as AfterSaid['ran']['impact'],
      }),
    },
    hot: pressuresSaid(kart, 'hot pressure', tyre => typed[hotKey(tyre)]),
    treads: treads.value,
    ...said({ litres, plug: word(typed.plug) as AfterSaid['plug'] }),
  };
  return { ok: true, value: afterSession(kart, after) };
}

const word = (text: string | undefined): string | undefined => text?.trim() || undefined;

/** Pressures as they were typed, a bare number in the unit of the wheel's own item. */
export function pressuresSaid(kart: Kart, key: string, of: (tyre: Tyre) => string | undefined): PressuresSaid {
  return Object.fromEntries(
    TYRES.flatMap(tyre => {
      const text = word(of(tyre));
      return text === undefined ? [] : [[tyre, withUnit(text, pressureUnit(kart, key))]];
    }),
  );
}

/** In what the wheels are read, as the person chose; bar where the kart file does not say. */
export const pressureUnit = (kart: Kart, key: string): string =>
  ownUnitOf(Object.values(kart.items).find(item => item.key === key)?.measure?.unit ?? 'bar');

/** A tyre is probed at three places or not at all. */
function treadsSaid(typed: Typed): Said<NonNullable<AfterSaid['treads']>> {
  const problems: Problem[] = [];
  const found = TYRES.flatMap(tyre => {
    const [inside, middle, outside] = PLACES.map(place => numberSaid(typed, tread(tyre, place)));
    const all = [inside, middle, outside];
    if (all.every(value => value === undefined)) return [];
    problems.push(...all.filter(isProblem));
    for (const [n, value] of all.entries()) {
      const place = PLACES[n] ?? '';
      if (value === undefined)
        problems.push(
          problemAt(treadKey(tyre, place), `tread, ${tyre}, ${place}`, 'nothing', trackWords.probeAllThree),
        );
    }
    return [[tyre, { inside, middle, outside }] as const];
  });
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, value: Object.fromEntries(found) as NonNullable<AfterSaid['treads']> };
}

/** The field a refusal is about; undefined: it is about all of it. A batch names its facts by number. */
export function fieldAfter(kart: Kart, drafts: readonly Draft[], { where }: Problem): string | undefined {
  const [, nth = '0', rest = ''] = /^(?:facts\[(\d+)\]|fact)\.?(.*)$/.exec(where) ?? [];
  const draft = drafts[Number(nth)];
  if (draft === undefined) return undefined;
  if (draft.kind === 'checked') return pressureKey(kart, String(draft.item));
  if (draft.kind === 'plug read') return 'plug';
  if (draft.kind === 'fuel used') return 'litres';
  if (draft.kind === 'treads probed') return rest.replace(/^celsius\.(.*)\.(\w+)$/, 'tread $1 $2');
  return rest.split('.').at(-1) || undefined;
}

/** 'hot front left' of the item of that wheel. */
export function pressureKey(kart: Kart, id: string): string | undefined {
  const item = kart.items[id];
  const corner = kart.parts[item?.part ?? '']?.corner;
  return item && corner ? `${item.key.replace(/ pressure$/, '')} ${corner}` : undefined;
}

/** What the book refuses as a pass, said again: it was read, and it is out of its limits. */
export function outOfLimits(drafts: readonly Draft[], problems: readonly Problem[]): readonly Draft[] {
  const out = new Set(
    problems.filter(({ code }) => code === 'outside limits').map(({ where }) => /\[(\d+)\]/.exec(where)?.[1] ?? '0'),
  );
  return drafts.map((draft, n) =>
    out.has(String(n)) ? { ...draft, result: 'fail', why: trackWords.readOutsideItsLimits } : draft,
  );
}

/** Refusals after which the same, pressed once more, is recorded as it was said. */
export const saidAgain = (problems: readonly Problem[], asksAgain: boolean): boolean =>
  asksAgain ||
  (problems.length > 0 && problems.every(({ code }) => code === 'far outside' || code === 'outside limits'));

/**
 * The track sheet: before a session, weather in, and out come air, jet, pressures, fuel, gearing and what has changed.
 * Every answer is one of the numbers, asked with what the record says; what the record lacks is named, not guessed.
 */
import { type Fact, fold } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { counted } from '../setup-history.ts';
import { airRead } from './air.ts';
import { airPart } from './air-part.ts';
import { fuelPart } from './fuel-part.ts';
import { gearPart } from './gear-part.ts';
import { jetPart, lastRight } from './jet-part.ts';
import type { AirPoint, TrackAsk, TrackSheet } from './model.ts';
import { trackRecord } from './session.ts';
import { sinceLast } from './since.ts';
import { tyrePart } from './tyre-part.ts';

/** @param facts of this kart alone, up to the moment asked about; struck ones and their strikes may be among them */
export function trackSheet(kart: Kart, facts: readonly Fact[], ask: TrackAsk): TrackSheet {
  const record = trackRecord(kart, facts, ask.now);
  const last = record.sessions.at(-1);
  const laps = ask.laps ?? last?.outing.laps ?? null;
  const wet = ask.wet ?? false;
  const baseline = lastRight(record.sessions)?.air.density ?? null;
  return {
    kart: kart.name,
    invented: kart.invented,
    at: ask.now,
    last: last?.outing ?? null,
    laps,
    wet,
    parts: [
      airPart(record.coming, baseline, ask.now),
      jetPart(kart, record),
      tyrePart(kart, record, { laps, wet }),
      fuelPart(kart, record, laps),
      gearPart(kart, fold(facts), record, ask.wanted),
    ],
    since: sinceLast(kart, facts, record),
    air: airOfDay(facts, ask.now),
    baseline,
  };
}

const DAY_MS = 24 * 3_600_000;

/** Readings of the day, oldest first; those of which the air is not known are left out. */
const airOfDay = (facts: readonly Fact[], now: string): readonly AirPoint[] =>
  counted(facts).flatMap(fact => {
    const age = Date.parse(now) - Date.parse(fact.at);
    const air = fact.kind === 'weather' && age >= 0 && age < DAY_MS ? airRead(fact) : undefined;
    return air ? [{ at: fact.at, density: air.density, band: air.band }] : [];
  });

/** What to pour: oil, and petrol where the total is asked, with what is already in the can. Source: premix-shares. */
import { POSSIBLE_RATIO } from '../mix-ratio.ts';
import { type Densities, oilForPetrol, oilInMix, USUAL, volumeRatio } from './mix.ts';

export type OilQuestion = {
  readonly ratio: number; // parts of petrol to one of oil
  readonly by: 'volume' | 'mass'; // how the maker means it
  readonly volume: number; // m³
  /** The volume is all the mix wanted in the can at the end, or the petrol that is poured in now. */
  readonly of: 'mix in the can' | 'petrol poured';
  readonly densities?: Densities;
  /** In the can before; `ratio` undefined: petrol without oil. */
  readonly can?: { readonly volume: number; readonly ratio?: number };
};

export type Pour = {
  readonly kind: 'pour';
  readonly oil: number; // to add [m³]
  readonly petrol: number; // to add [m³]
  readonly mix: number; // in the can then [m³]
  readonly ratio: number; // by volume
};
/** The can holds more oil, or more mix, than is wanted: petrol in it must grow to `petrolAtLeast` poured. */
export type CannotPour = {
  readonly kind: 'too much oil in the can' | 'more in the can than wanted' | 'not known';
  readonly mixAtLeast: number; // least mix that can be reached at this ratio [m³]; not a number when not known
};

/** In SI; what is not known or cannot be is said, never a smaller amount of oil. */
export function oilFor(asked: OilQuestion): Pour | CannotPour {
  const { volume, densities = USUAL, can } = asked;
  const byVolume = (ratio: number): number => (asked.by === 'mass' ? volumeRatio(ratio, densities) : ratio);
  const ratio = byVolume(asked.ratio);
  const before = can?.volume ?? 0;
  const oilBefore = can?.ratio === undefined ? 0 : oilInMix(before, byVolume(can.ratio));
  const possible = (each: number | undefined): boolean =>
    each === undefined || (each >= POSSIBLE_RATIO.least && each <= POSSIBLE_RATIO.most);
  const sound = volume > 0 && before >= 0 && ratio > 0 && Number.isFinite(volume + before + ratio);
  if (!(sound && possible(asked.ratio) && possible(can?.ratio))) return { kind: 'not known', mixAtLeast: Number.NaN };
  const petrolBefore = before - oilBefore;
  const least = Math.max(oilBefore * (ratio + 1), petrolBefore * (1 + 1 / ratio));
  const oil =
    asked.of === 'mix in the can'
      ? oilInMix(volume, ratio) - oilBefore
      : oilForPetrol(volume + petrolBefore, ratio) - oilBefore;
  const petrol = asked.of === 'mix in the can' ? volume - before - oil : volume;
  if (petrol < -ROUNDING) return { kind: 'more in the can than wanted', mixAtLeast: least };
  if (oil < -ROUNDING) return { kind: 'too much oil in the can', mixAtLeast: least };
  const [addOil, addPetrol] = [Math.max(0, oil), Math.max(0, petrol)];
  return { kind: 'pour', oil: addOil, petrol: addPetrol, mix: before + addOil + addPetrol, ratio };
}

/** A billionth of a litre: two volumes that are the same but for the last bits [m³]. */
const ROUNDING = 1e-12;

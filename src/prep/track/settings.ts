/** Jet and sprockets as they were written down among the settings, in the words people use. */
import { readRatio } from '../../numbers/index.ts';
import type { Coming } from './session.ts';

type Settings = Coming['settings'];

/** The number on the main jet; undefined where nobody wrote one. */
export const mainJet = (settings: Settings): number | undefined => numberIn(settings['main jet']);

/** Teeth at the engine and on the axle, from the two sprockets or from `gearing` as 17/24. */
export function sprockets(settings: Settings): { readonly front: number; readonly rear: number } | undefined {
  const pair = /^(\d{1,2})\s*[/:x×]\s*(\d{1,2})$/.exec(settings.gearing ?? '');
  const [front, rear] = [
    numberIn(settings['front sprocket']) ?? (pair ? Number(pair[1]) : undefined),
    numberIn(settings['rear sprocket']) ?? (pair ? Number(pair[2]) : undefined),
  ];
  return front === undefined || rear === undefined ? undefined : { front, rear };
}

/** Petrol to one part of oil, by volume, of a mix that was poured; undefined where it cannot be one. */
export function ratioOf(mixed: Coming['mixed']): string | undefined {
  if (mixed === undefined || !(mixed.oilMillilitres > 0)) return undefined;
  const text = `${Number(((mixed.litres * 1000) / mixed.oilMillilitres).toPrecision(4))}:1`;
  return readRatio(text).ok ? text : undefined;
}

const numberIn = (text: string | undefined): number | undefined => {
  const found = /^\s*(\d+(?:[.,]\d+)?)\s*(?:teeth)?\s*$/i.exec(text ?? '')?.[1];
  return found === undefined ? undefined : Number(found.replace(',', '.'));
};

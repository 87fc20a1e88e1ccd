/**
 * SI numbers that know their unit. `Qty<'m'>` and `Qty<'kg'>` are plain numbers when they run and different types when
 * they are compiled; only this folder casts.
 */
declare const unitOf: unique symbol;
export type Qty<U extends string> = number & { readonly [unitOf]: U };

const as = <U extends string>(si: number): Qty<U> => si as Qty<U>;

export const metres = (v: number): Qty<'m'> => as(v);
export const mm = (v: number): Qty<'m'> => as(v / 1000);
export const inch = (v: number): Qty<'m'> => as((v * 254) / 10000);
export const kg = (v: number): Qty<'kg'> => as(v);
export const newton = (v: number): Qty<'N'> => as(v);
export const newtonMetre = (v: number): Qty<'N·m'> => as(v);
/** Gauge pressure: over the air around. */
export const bar = (v: number): Qty<'Pa gauge'> => as(v * 100000);
/** Absolute pressure: over vacuum. */
export const barAbsolute = (v: number): Qty<'Pa absolute'> => as(v * 100000);
export const celsius = (v: number): Qty<'K'> => as(v + 273.15);
export const kelvinDifference = (v: number): Qty<'K difference'> => as(v);
export const degrees = (v: number): Qty<'rad'> => as((v * Math.PI) / 180);
export const minutes = (v: number): Qty<'s'> => as(v * 60);

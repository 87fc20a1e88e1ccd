import { describe, expect, it } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import { CHAIN_START, type Draft, fold, sealAll } from '../../book/index.ts';
import type { Kart, NumberName } from '../../kart/index.ts';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { aimOf, compressionSaid, limitsOf } from './index.ts';

const q = (text: string): Measure => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};
const kartOf = (dimensions: Readonly<Record<string, string>>): Kart => ({
  ...smallKart(),
  dimensions: Object.fromEntries(Object.entries(dimensions).map(([name, text]) => [name, q(text)])),
});
const measured = (number: NumberName, unit = 'mm') =>
  item('hub/x', [{ on: 'event' }], { action: 'measure', measure: { unit, number } });

describe('ignition timing', () => {
  const timing = measured('ignition-timing');
  it('is what the dial gauge reads for the degrees on the sheet (row eng.ign2, worked outside the project)', () => {
    const kart = kartOf({ 'ignition timing': '17.118167557 °', stroke: '54.5 mm', 'rod length': '110 mm' });
    expect(aimOf(kart, timing).target?.si).toBeCloseTo(1.5e-3, 10);
    expect(aimOf(kart, timing).target?.text).toBe('1.50 mm before top');
  });
  it('names what the kart file does not give, and is none for a crank that cannot be', () => {
    expect(aimOf(kartOf({ stroke: '54.5 mm' }), timing).say.join()).toMatch(/"ignition timing", "rod length"/);
    const short = kartOf({ 'ignition timing': '17 °', stroke: '54.5 mm', 'rod length': '20 mm' });
    expect(aimOf(short, timing).target).toBeNull();
  });
});

describe('squish', () => {
  it('has the engine’s own least, with the calliper’s limits on top; without one common practice', () => {
    const squish = measured('least-squish');
    expect(limitsOf(kartOf({ 'least squish': '0.95 mm' }), squish).min?.si).toBeCloseTo(0.97e-3, 9);
    expect(limitsOf(kartOf({}), squish).min?.si).toBeCloseTo(0.77e-3, 9);
  });
});

describe('compression', () => {
  const compression = measured('compression-trend', 'bar');
  const hub = smallKart().parts.hub;
  const kart: Kart = {
    ...smallKart(compression),
    parts: hub ? { ...smallKart(compression).parts, hub: { ...hub, disturbs: [compression.id] } } : {},
  };
  type Said = Record<string, unknown> & { readonly kind: string };
  const said = (...facts: readonly Said[]): string => {
    const log = sealAll(
      CHAIN_START,
      facts.map((fact, n) => {
        const at = new Date(Date.parse('2026-05-01T08:00:00.000Z') + n * 3_600_000).toISOString();
        return { ...fact, id: `f${n}`, kart: 'small', at, recorded: at, by: 'A', device: 'b' } as Draft;
      }),
    );
    return compressionSaid(kart, fold(log), compression).join(' ');
  };
  const read = (bar: number): Said => ({
    kind: 'checked',
    item: compression.id,
    result: 'pass',
    reading: { text: `${bar} bar`, si: bar * 1e5, unit: 'bar', resolution: 1e4 },
  });
  const ran = (minutes: number): Said => ({ kind: 'ran', minutes });
  it('says how far it has fallen, and when the line reaches a tenth', () => {
    // 10.0, 9.8, 9.6 bar at 1, 2, 3 h: 0.2 bar an hour, so 9.0 bar, a tenth under the best, at 6 h.
    expect(said(ran(60), read(10), ran(60), read(9.8), ran(60), read(9.6))).toMatch(
      /4\.0 % below the best of 3 readings .*at 6 h on this piston/,
    );
  });
  it('asks for the top end to be opened from a tenth on', () => {
    expect(said(read(10), ran(60), read(9))).toMatch(/10\.0 % below .*open the top end/);
  });
  it('says nothing of one reading, and begins anew with a new part', () => {
    expect(said(read(10))).toBe('');
    expect(
      said(read(10), { kind: 'taken off', part: 'hub' }, { kind: 'fitted', part: 'hub', fresh: true }, read(8.9)),
    ).toBe('');
  });
});

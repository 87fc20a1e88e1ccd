import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Item, Joint, Kart } from '../../kart/index.ts';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { aimOf, limitsOf } from './aim.ts';

const q = (text: string): Measure => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};

/** The stack of common practice: 55 in overall asks for 5 3/4 in from bearing to hub. */
const withStack = (width: string, max?: string): Kart => ({
  ...smallKart(),
  dimensions: {
    'overall rear width': q(width),
    'bearing faces': q('25.75 in'),
    'hub length left': q('3 in'),
    'hub length right': q('3 in'),
    'tyre outboard left': q('5.875 in'),
    'tyre outboard right': q('5.875 in'),
    'axle length': q('1040 mm'),
  },
  ...(max
    ? {
        rules: {
          id: 'x',
          body: 'x',
          year: 2026,
          note: '',
          limits: { 'overall rear width': { max: q(max), source: 'x' } },
        },
      }
    : {}),
});

const gap: Item = item('hub/track', [{ on: 'disturbed' }], {
  action: 'measure',
  measure: { unit: 'mm', number: 'rear-track' },
});

describe('the target of a step', () => {
  it('is the gap that gives the wanted rear width: 5 3/4 in for 55 in (common practice)', () => {
    expect(aimOf(withStack('55 in'), gap).target).toMatchObject({ unit: 'mm', text: '146.05 mm (5 3/4 in)' });
    expect(aimOf(withStack('55 in'), gap).target?.si).toBeCloseTo(0.14605, 9);
  });
  it('is the tape mark below where the nearest would pass the limit', () => {
    // 1400 mm asks for 147.55 mm; the nearest 1/16 in is 5 13/16 in = 147.6375 mm, which sets 1400.175 mm.
    expect(aimOf(withStack('1400 mm', '1400 mm'), gap).target?.text).toBe('147.55 mm (5 3/4 in)');
    expect(aimOf(withStack('1400 mm'), gap).target?.text).toBe('147.55 mm (5 13/16 in)');
  });
  it('never asks for more width than the rule set allows', () => {
    expect(aimOf(withStack('1410 mm', '1400 mm'), gap).target?.si).toBeCloseTo(0.14755, 9);
  });
  it('is not there when a dimension is missing, and the step says which', () => {
    expect(aimOf(smallKart(), gap).target).toBeNull();
    expect(aimOf(smallKart(), gap).say.join(' ')).toContain('"bearing faces"');
  });
  it('may be off by 1 mm, so that a wrong gap is no pass', () => {
    expect(limitsOf(withStack('55 in'), gap)).toMatchObject({ min: { text: '145.05 mm' }, max: { text: '147.05 mm' } });
  });
  it('is never above what both sides may have within the class, and the mark shown is never refused', () => {
    // 1400 mm asks for 147.55 mm and allows no more; the mark below is 5 3/4 in = 146.05 mm.
    const { min, max } = limitsOf(withStack('1400 mm', '1400 mm'), gap);
    expect(max?.si).toBeCloseTo(0.14755, 9);
    expect(min?.si).toBeCloseTo(0.14605, 9);
    expect(aimOf(withStack('1400 mm', '1400 mm'), gap).say.join(' ')).toContain('as wide as its class allows (x)');
  });
  it('lies between its limits, and both hubs at their largest keep the class, whatever the width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1200, max: 1450 }), fc.integer({ min: 1200, max: 1450 }), (width, limit) => {
        const kart = withStack(`${width} mm`, `${limit} mm`);
        const { target } = aimOf(kart, gap);
        const { min, max } = limitsOf(kart, gap);
        if (!target || !min || !max) throw new Error('these stacks all have a gap');
        expect(target.si).toBeGreaterThanOrEqual(min.si - 1e-12);
        expect(target.si).toBeLessThanOrEqual(max.si + 1e-12);
        // W = bearing faces + 2 (gap + hub + tyre), all of withStack
        expect(25.75 * 0.0254 + 2 * (max.si + 8.875 * 0.0254)).toBeLessThanOrEqual(limit / 1000 + 1e-9);
      }),
    );
  });
  it('says of a torque that was worked out, and not given by a maker, that it is computed', () => {
    const kart = smallKart();
    const bolts = kart.joints['hub/bolts'];
    const check = kart.items['hub/bolts'];
    if (!bolts || !check) throw new Error('the small kart has a bolted hub');
    const torque = { min: q('15.2 N·m'), max: q('17.8 N·m'), source: 'computed from M8x1.25 8.8' };
    const aim = (joint: Joint) => aimOf({ ...kart, joints: { ...kart.joints, 'hub/bolts': joint } }, check);
    expect(aim({ ...bolts, torque: { ...torque, computed: [] } }).target?.text).toBe('15.2 N·m to 17.8 N·m, computed');
    expect(aim({ ...bolts, torque }).tolerance?.text).toBe('15.2 N·m to 17.8 N·m');
  });
  it('takes the tighter of the item and the rule set', () => {
    const width = item('frame/width', [{ on: 'event' }], {
      measure: { unit: 'mm', max: q('1400 mm'), rule: 'overall rear width' },
    });
    expect(aimOf(withStack('55 in', '1397 mm'), width).tolerance?.text).toBe('at most 1397 mm');
    expect(aimOf(withStack('55 in', '1410 mm'), width).tolerance?.text).toBe('at most 1400 mm');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Measure, parseQuantity } from '../quantity/index.ts';
import { engagement, gapFor, halfWidth, narrowest, rearTrackTarget } from './index.ts';
import { rearTrack } from './rear-track.ts';

const stack = {
  'bearing faces': '655 mm',
  'hub length': '75 mm',
  'tyre outboard': '149.95 mm',
  'axle length': '1040 mm',
};
const answer = (input: unknown) => {
  const given = rearTrack.ask(input);
  if (given.kind === 'problems') throw new Error(JSON.stringify(given.problems));
  return given;
};
const problems = (input: unknown) => {
  const given = rearTrack.ask(input);
  if (given.kind === 'answer') throw new Error(`answered ${JSON.stringify(given.say)}`);
  return given.problems;
};
const all = (given: { readonly say: readonly string[]; readonly notes: readonly string[] }) =>
  [...given.say, ...given.notes].join('\n');

const metre = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const side = fc.record({ bearing: metre(0.25, 0.45), hub: metre(0.04, 0.15), outboard: metre(0.06, 0.25) });

describe('the stack of lengths', () => {
  it('gives back the gap from the width and the width from the gap', () => {
    fc.assert(
      fc.property(side, metre(0, 0.3), (s, gap) => {
        expect(gapFor(s, halfWidth(s, gap))).toBeCloseTo(gap, 12);
      }),
    );
  });
  it('is the same seen from the other side, and scales with its lengths', () => {
    fc.assert(
      fc.property(side, side, metre(0, 0.3), metre(0.1, 10), (left, right, gap, k) => {
        expect(narrowest(left, right)).toBe(narrowest(right, left));
        const scaled = { bearing: k * left.bearing, hub: k * left.hub, outboard: k * left.outboard };
        expect(halfWidth(scaled, k * gap)).toBeCloseTo(k * halfWidth(left, gap), 9);
        expect(gapFor(left, narrowest(left, right) / 2)).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });
  it('has less axle in the hub the further out the hub stands, never more than the hub is long', () => {
    fc.assert(
      fc.property(side, metre(0, 0.3), metre(0, 0.1), (s, gap, out) => {
        expect(engagement(s, gap + out, 0.2)).toBeLessThanOrEqual(engagement(s, gap, 0.2));
        expect(engagement(s, gap, 0.2)).toBeLessThanOrEqual(s.hub);
      }),
    );
  });
});

describe('a question about the rear track', () => {
  it('answers in inches first when it was asked in inches', () => {
    const { figures, say } = answer({
      'bearing faces': '25 3/4 in',
      'hub length': '3 in',
      'tyre outboard': '5 7/8 in',
      'overall rear width': '55 in',
    });
    expect(figures['gap left']).toMatchObject({ unit: 'in', text: '5 3/4 in (146.05 mm)' });
    expect(say[0]).toBe('Set both hubs 5 3/4 in (146.05 mm) from bearing face to inner end of hub.');
  });
  it('says which hub to move, which way and how far', () => {
    const { say } = answer({
      ...stack,
      'overall rear width': '1397 mm',
      'gap left': '149.225 mm',
      'gap right': '146.05 mm',
    });
    expect(say).toContain('Move the left hub in 3.17 mm (1/8 in).');
    expect(say).toContain('Leave the right hub where it is.');
    expect(say.at(-1)).toMatch(/^Caution: .*second retention, second look/);
  });
  it('brings the kart to the middle and the measured width to the wanted one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1200, max: 1395 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: -3, max: 3 }),
        (wanted, left, right, off) => {
          const measured = 1104.9 + left + right + off;
          if (measured < 1104.9) return;
          const { figures } = answer({
            ...stack,
            'overall rear width': `${wanted} mm`,
            'measured width': `${measured} mm`,
            'gap left': `${left} mm`,
            'gap right': `${right} mm`,
          });
          const [outLeft, outRight] = [
            figures['left hub outward']?.si ?? Number.NaN,
            figures['right hub outward']?.si ?? Number.NaN,
          ];
          expect(measured / 1000 + outLeft + outRight).toBeCloseTo(wanted / 1000, 9);
          expect(left / 1000 + outLeft).toBeCloseTo(right / 1000 + outRight, 9);
        },
      ),
    );
  });
  it('mirrors: left and right exchanged give left and right exchanged', () => {
    const one = answer({
      ...stack,
      'overall rear width': '1390 mm',
      'gap left': '140 mm',
      'gap right': '150 mm',
    }).figures;
    const two = answer({
      ...stack,
      'overall rear width': '1390 mm',
      'gap left': '150 mm',
      'gap right': '140 mm',
    }).figures;
    expect(one['left hub outward']?.si).toBeCloseTo(two['right hub outward']?.si ?? Number.NaN, 12);
  });
  it('chooses the mark below where the nearest one would pass the limit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12000, max: 14000 }),
        fc.constantFrom('1/8 in', '1/16 in', '1/32 in'),
        (tenths, marks) => {
          const width = `${tenths / 10} mm`;
          const { figures } = answer({
            ...stack,
            'axle length': '1090 mm',
            'overall rear width': width,
            'width limit': width,
            'tape marks': marks,
          });
          const mark = parseQuantity(/\((.*)\)/.exec(figures['gap left']?.text ?? '')?.[1], 'length');
          expect(mark.ok && 1.1049 + 2 * mark.value.si).toBeLessThanOrEqual(tenths / 10000 + 1e-9);
        },
      ),
    );
  });
  it('says so when the width passes the limit, or is too near it to be sure', () => {
    const limit = { 'width limit': '1400 mm' };
    expect(all(answer({ ...stack, ...limit, 'overall rear width': '1403 mm' }))).toContain(
      'over the limit by 3 mm: choose 1400 mm or less',
    );
    expect(all(answer({ ...stack, ...limit, 'measured width': '1400 mm' }))).toContain(
      'too near it to be sure: the chance of being inside is 50.0 %',
    );
    expect(all(answer({ ...stack, ...limit, 'measured width': '1300 mm' }))).toContain(
      'chance of being inside is over 99.9 %',
    );
    expect(all(answer({ ...stack, ...limit, 'measured width': '1500 mm' }))).toContain(
      'chance of being inside is under 0.1 %',
    );
  });
  it('rejects a hub with less than 40 mm of axle in it, and takes exactly 40', () => {
    const at = (axle: string) => all(answer({ ...stack, 'axle length': axle, 'overall rear width': '1397 mm' }));
    expect(at('1020 mm')).toMatch(/Reject: the left hub has 36.45 mm .* at least 40 mm .*\(common practice\)/);
    expect(at('1027.2 mm')).not.toContain('Reject');
    expect(at('1027 mm')).toContain('Reject');
  });
  it('does not know the engagement when nobody measured the axle', () => {
    const { 'axle length': _, ...without } = stack;
    expect(all(answer({ ...without, gap: '146 mm' }))).toContain(
      'Hub engagement on the axle is not known: add "axle length".',
    );
  });
  it('takes an axle and bearings that do not stand in the middle', () => {
    const { figures } = answer({
      ...stack,
      'bearing face left': '330 mm',
      'axle beyond bearing left': '190 mm',
      'overall rear width': '1397 mm',
    });
    expect(figures['gap left']?.si).toBeCloseTo(0.14355, 9);
    expect(figures['gap right']?.si).toBeCloseTo(0.14855, 9);
    expect(figures['engagement left']?.si).toBeCloseTo(0.19 - 0.14355, 9);
    expect(figures['engagement right']?.si).toBeCloseTo(0.195 - 0.14855, 9);
  });
  it('doubts the lengths when tape and sum disagree by more than their uncertainty', () => {
    expect(all(answer({ ...stack, 'measured width': '1405 mm', gap: '146.05 mm' }))).toContain('8 mm apart');
    expect(all(answer({ ...stack, 'measured width': '1398 mm', gap: '146.05 mm' }))).not.toContain('apart');
  });
  it('marks a length no such kart has', () => {
    expect(all(answer({ ...stack, 'hub length': '5 mm', 'overall rear width': '1200 mm' }))).toContain(
      'Outside the range this was checked for: hub length left 5 mm',
    );
  });
  it('marks two sides that are far apart: a figure was misread', () => {
    expect(all(answer({ ...stack, 'gap left': '146 mm', 'gap right': '14.6 mm' }))).toContain('131.4 mm apart');
    expect(all(answer({ ...stack, 'gap left': '146 mm', 'gap right': '149 mm' }))).not.toContain('apart');
  });
  it('carries limits written behind a length into the worst case', () => {
    const { figures } = answer({
      'bearing faces': '655 ± 1 mm',
      'hub length': '75 mm ± 0 mm',
      'tyre outboard': '149.95 mm +/- 2 mm',
      gap: '146.05 mm ± 0.5 mm',
    });
    expect(figures['worst case']?.si).toBeCloseTo(0.001 + 2 * 0.002 + 2 * 0.0005, 12);
    expect(figures['standard uncertainty']?.si).toBeCloseTo(Math.sqrt((1 + 16 + 1) / 3) / 1000, 12);
  });
});

describe('a question that cannot be answered', () => {
  it('is told everything at once, each with its path and remedy', () => {
    const found = problems({
      'bearing faces': 655,
      'hub length': '75 kg',
      'overall rear width': '1397',
      widht: '1 m',
      'tape marks': '1/7 in',
    });
    expect(found.map(p => p.path).sort()).toEqual([
      'bearing faces',
      'hub length',
      'overall rear width',
      'tape marks',
      'widht',
    ]);
    for (const p of found) expect(p.remedy.length).toBeGreaterThan(5);
    expect(found.find(p => p.path === 'bearing faces')?.remedy).toContain('"655 mm"');
  });
  it('is told which length is missing or given twice', () => {
    expect(
      problems({ 'bearing faces': '655 mm', 'hub length left': '75 mm', gap: '3 mm', 'gap left': '2 mm' }).map(
        p => p.path,
      ),
    ).toEqual(['hub length right', 'tyre outboard', 'gap']);
    expect(problems({})[0]).toMatchObject({ path: 'bearing faces', got: 'nothing' });
    expect(problems(stack)[0]?.remedy).toContain('add "overall rear width"');
  });
  it('refuses a hub inside its bearing and says the narrowest width', () => {
    expect(problems({ ...stack, 'overall rear width': '900 mm' })[0]).toMatchObject({
      path: 'overall rear width',
      expected: expect.stringContaining('1104.9 mm or more'),
    });
    expect(answer({ ...stack, 'overall rear width': '1104.9 mm' }).figures['gap left']?.text).toBe('0 mm (0 in)');
  });
  it('refuses a hub beside the axle, a length below zero, an axle inside its bearings', () => {
    expect(problems({ ...stack, 'overall rear width': '1600 mm' })[0]?.expected).toContain('192.5 mm');
    expect(problems({ ...stack, gap: '-3 mm' }).map(p => p.path)).toContain('gap');
    expect(problems({ ...stack, 'axle length': '600 mm', gap: '3 mm' })[0]).toMatchObject({ path: 'axle length' });
    expect(problems({ ...stack, 'bearing face left': '700 mm', gap: '3 mm' })[0]).toMatchObject({
      path: 'bearing face left',
    });
    expect(problems({ ...stack, gap: '3 mm', spread: '1 mm', confidence: '100 %' }).map(p => p.path)).toEqual([
      'readings',
      'confidence',
    ]);
  });
  it('never throws, whatever comes, and never promises', () => {
    fc.assert(
      fc.property(
        fc.anything(),
        fc.dictionary(
          fc.constantFrom(...Object.keys(stack), 'gap', 'overall rear width', 'width limit'),
          fc.oneof(
            fc.string(),
            fc.double().map(n => `${n} mm`),
          ),
        ),
        (any, keyed) => {
          expect(['answer', 'problems']).toContain(rearTrack.ask(any).kind);
          const given = rearTrack.ask({ ...stack, ...keyed });
          expect(JSON.stringify(given)).not.toMatch(/\bsafe/i);
        },
      ),
    );
  });
});

describe('the target of a plan', () => {
  const measure = (text: string): Measure => {
    const parsed = parseQuantity(text);
    if (!parsed.ok) throw new Error(parsed.remedy);
    return parsed.value;
  };
  const kart = {
    'overall rear width': measure('1397 mm'),
    'bearing faces': measure('655 mm'),
    'hub length left': measure('75 mm'),
    'hub length right': measure('95 mm'),
    'tyre outboard left': measure('149.95 mm'),
    'tyre outboard right': measure('149.95 mm'),
    'axle length': measure('1040 mm'),
  };
  it('is the gap on each side, in metres', () => {
    const target = rearTrackTarget(kart);
    if ('missing' in target) throw new Error(target.why);
    expect(target.gapLeft).toBeCloseTo(0.14605, 12);
    expect(target.gapRight).toBeCloseTo(0.12605, 12);
    expect(target.engagementLeft).toBeCloseTo(0.04645, 12);
    expect(target.width).toBe(1.397);
  });
  it('never asks for more than the rules allow', () => {
    expect(rearTrackTarget(kart, measure('1390 mm'))).toMatchObject({ width: 1.39 });
  });
  it('names what is missing, and what cannot be', () => {
    const { 'axle length': _, ...rest } = kart;
    expect(rearTrackTarget(rest)).toEqual({ missing: ['axle length'] });
    expect(rearTrackTarget({ ...kart, 'axle length': measure('5 kg') })).toEqual({ missing: ['axle length'] });
    expect(rearTrackTarget({ ...kart, 'overall rear width': measure('1 m') })).toMatchObject({
      missing: ['overall rear width'],
      why: expect.stringContaining('1145 mm or more'),
    });
    expect(rearTrackTarget({ ...kart, 'axle length': measure('700 mm') })).toMatchObject({ missing: ['axle length'] });
  });
});

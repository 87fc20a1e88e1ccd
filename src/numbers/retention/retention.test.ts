import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { failsAnotherWay, MEANS, meansOf } from './means.ts';
import { retention } from './retention.ts';
import { pinForHole, SPLIT_PINS, STRAPS, strapFor, strapOf, twistsFor } from './tables.ts';

const ask = (input: Readonly<Record<string, unknown>>) => {
  const answer = retention.ask(input);
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return { ...answer, said: answer.say.join(' ') };
};
const paths = (input: Readonly<Record<string, unknown>>) => {
  const answer = retention.ask(input);
  return answer.kind === 'problems' ? answer.problems.map(p => p.path) : [];
};

describe('tables', () => {
  it('rise, and a pin is thinner than the hole it is named for', () => {
    for (const [n, pin] of SPLIT_PINS.entries()) {
      expect(pin.least).toBeLessThan(pin.most);
      expect(pin.most).toBeLessThan(pin.nominal);
      expect(pin.nominal).toBeGreaterThan(SPLIT_PINS[n - 1]?.nominal ?? 0);
    }
    for (const [n, strap] of STRAPS.entries()) {
      expect(strap.width).toBeGreaterThan(STRAPS[n - 1]?.width ?? 0);
      expect(strap.strength).toBeGreaterThan(STRAPS[n - 1]?.strength ?? 0);
    }
  });
  it('give the largest pin that goes through, and never one that does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0005, max: 0.008, noNaN: true }), hole => {
        const pin = pinForHole(hole);
        if (pin) expect(pin.most).toBeLessThan(hole);
        else expect(hole).toBeLessThan(0.0016);
      }),
    );
  });
  it('give a strap that holds the load at half of its strength, and no narrower one does', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 600, noNaN: true }), load => {
        const strap = strapFor(load);
        if (!strap) {
          expect(load).toBeGreaterThan(0.5 * 114 * 9.80665);
          return;
        }
        expect(0.5 * strap.strength).toBeGreaterThanOrEqual(load);
        for (const narrower of STRAPS.filter(s => s.width < strap.width))
          expect(0.5 * narrower.strength).toBeLessThan(load);
      }),
    );
    expect(strapOf(0.005)?.width).toBe(0.0048);
    expect(strapOf(0.002)).toBeUndefined();
  });
  it('know wire sold in mm, and nothing between the printed sizes', () => {
    expect(twistsFor(0.0008)).toMatchObject({ least: 6, most: 11 });
    expect(twistsFor(0.0007)).toBeUndefined();
    expect(twistsFor(0.003)).toBeUndefined();
  });
});

describe('a second means', () => {
  it('has to let go in another way than the first', () => {
    expect(failsAnotherWay('self-locking nut', 'split pin')).toBe('yes');
    expect(failsAnotherWay('spring clip', 'cable tie')).toBe('yes');
    expect(failsAnotherWay('Spring clip', 'second clip')).toBe('no');
    expect(failsAnotherWay('self-locking nut', 'second nut')).toBe('no');
    expect(failsAnotherWay('torque', 'safety wire')).toBe('yes');
  });
  it('is not a mark, which shows but holds nothing', () => {
    expect(failsAnotherWay('self-locking nut', 'witness mark')).toBe('no');
    expect(failsAnotherWay('torque', 'witness mark, wire where drilled')).toBe('yes');
  });
  it('that leaves a choice counts only if every choice lets go in another way', () => {
    expect(failsAnotherWay('self-locking nut', 'split pin or wire')).toBe('yes');
    expect(failsAnotherWay('spring clip', 'second clip or strap round the clevis')).toBe('no');
  });
  it('is not known where the words are not', () => {
    expect(failsAnotherWay('hope', 'split pin')).toBe('not known');
    expect(failsAnotherWay('torque', 'large washer both faces')).toBe('not known');
    expect(meansOf('')).toEqual([]);
  });
  it('never becomes less when the two are the same: nothing is independent of itself', () => {
    for (const { name } of MEANS) expect(failsAnotherWay(name, name), name).toBe('no');
  });
  it('is recognised by its own name', () => {
    for (const each of MEANS) expect(meansOf(each.name)).toContain(each);
  });
  it('is recognised in more than 95 of 100 retentions that the kinds of part name', () => {
    const folder = new URL('../../../data/kinds/', import.meta.url);
    const named = readdirSync(folder)
      .filter(file => file.endsWith('.yaml'))
      .flatMap(file => Object.values<Kind>(parse(readFileSync(new URL(file, folder), 'utf8'))))
      .flatMap(kind => Object.values(kind.joints ?? {}))
      .map(joint => joint.retention ?? '');
    expect(named.length).toBeGreaterThan(50);
    const known = named.filter(text => meansOf(text).length > 0);
    expect(known.length / named.length).toBeGreaterThan(0.95);
  });
});

type Kind = { readonly joints?: Readonly<Record<string, { readonly retention?: string }>> };

describe('the subject', () => {
  it('gives the pin of a hole, and doubts one that is small for its bolt', () => {
    const { figures, said, notes } = ask({ means: 'split pin', thread: 'M10', 'hole diameter': '2.2 mm' });
    expect(figures['pin size']?.text).toBe('2 mm');
    expect(said).toContain('Caution:');
    expect(notes.join(' ')).toContain('smaller than usual');
    expect(ask({ means: 'split pin', thread: 'M8' }).notes.join(' ')).toContain('from memory');
  });
  it('rejects wire led too far, over too many heads, or too thin for its hole', () => {
    const wire = { means: 'safety wire', 'wire diameter': '0.8 mm' };
    expect(ask({ ...wire, spacing: '160 mm' }).said).toContain('Reject: heads 160 mm');
    expect(ask({ ...wire, spacing: '120 mm', heads: '4' }).said).toContain('at most 3');
    expect(ask({ ...wire, spacing: '90 mm', heads: '9' }).said).toContain('smaller groups');
    expect(ask({ ...wire, spacing: '40 mm', heads: '3' }).said).not.toContain('Reject');
    const thin = { means: 'safety wire', 'wire diameter': '0.020 in' };
    expect(ask({ ...thin, 'hole diameter': '2 mm' }).said).toContain('Reject: wire thinner');
    expect(ask({ ...thin, spacing: '60 mm' }).said).toContain('less than 50.8 mm');
    expect(ask({ ...thin, 'hole diameter': '1.4 mm', spacing: '30 mm' }).said).not.toContain('Reject');
  });
  it('counts a strap at half its strength and does not double its loop', () => {
    const { figures, said } = ask({ means: 'strap', 'strap width': '4.8 mm', load: '120 N' });
    expect(figures['loop strength, aged']?.si).toBeCloseTo(0.5 * 22.2 * 9.80665, 9);
    expect(said).toContain('Reject: not enough');
    expect(said).toContain('7.6 mm or wider');
    expect(ask({ means: 'strap', load: '2 kN' }).said).toContain('No strap listed');
  });
  it('rejects a plastic insert where it is hot, and a plain locking nut where the part turns', () => {
    expect(ask({ means: 'locking nut', temperature: '150 °C' }).said).toContain('all-metal');
    expect(ask({ means: 'locking nut', temperature: '100 °C' }).said).not.toContain('Reject');
    expect(ask({ means: 'locking nut', 'part turns': true }).said).toContain('castellated');
    expect(ask({ means: 'locking nut', thread: '10-32', 'running torque': '1 in-lb' }).said).toContain(
      'Reject: it takes only',
    );
  });
  it('names everything that is wrong at once', () => {
    expect(new Set(paths({ means: 'strap', heads: '2.5', load: '-3 N', thread: 'M8x3' }))).toEqual(
      new Set(['heads', 'load', 'thread']),
    );
    expect(paths({})).toEqual(['means']);
    expect(paths({ means: 'safety wire', 'wire diameter': '2 mm', 'hole diameter': '1 mm' })).toEqual([
      'wire diameter',
    ]);
    expect(paths({ means: 'split pin', 'hole diameter': '0.8 mm' })).toEqual(['hole diameter']);
    expect(paths({ means: 'split pin', thread: 'M8', 'hole diameter': '4 mm' })).toEqual(['hole diameter']);
    expect(paths({ means: 'split pin', 'hole diameter': '12 mm' })).toEqual(['hole diameter']);
    expect(paths({ means: 'split pin', thread: 'M8', 'hole diameter': '3.2 mm' })).toEqual([]);
    expect(paths({ means: 'strap', 'strap width': '1 mm' })).toEqual(['strap width']);
    expect(paths({ means: 'strap', load: '3 kg' })).toEqual(['load']);
  });
  it('tells whether two means are independent, in words', () => {
    expect(ask({ first: 'spring clip', second: 'strap' }).said).toContain('is a second means');
    expect(ask({ first: 'self-locking nut', second: 'witness mark' }).said).toContain('shows, but holds nothing');
    expect(ask({ first: 'x', second: 'y' }).said).toContain('not known');
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { kartFrom, templateKarts } from '../../../test/template-karts.ts';
import { fold } from '../../book/index.ts';
import { readPriors } from '../../life/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { secondRetentions, weakLinks } from './index.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const ask = {
  now: '2026-06-01T08:00:00.000Z',
  retentions: readRetentions(read('retentions.yaml')),
  priors: readPriors(read('priors.yaml')),
};
const none = fold([]);

describe('second retentions of a kart', () => {
  it('stay within money and minutes, and leave no fewer single points with less of either', () => {
    for (const kart of templateKarts()) {
      let before = Number.POSITIVE_INFINITY;
      for (const minutes of [0, 10, 30, 90]) {
        const { chosen } = secondRetentions(kart, none, ask, { minutes, money: 30 });
        expect(chosen.minutes).toBeLessThanOrEqual(minutes);
        expect(chosen.money).toBeLessThanOrEqual(30);
        expect(chosen.singlesLeft.severity1).toBeLessThanOrEqual(before);
        expect(chosen.hazards.every(({ from, to }) => to < from)).toBe(true);
        before = chosen.singlesLeft.severity1;
      }
    }
  });

  it('with no limit take every joint that alone loses brakes, steering or a wheel and can have one', () => {
    for (const kart of templateKarts()) {
      const { chosen, more, frontier } = secondRetentions(kart, none, ask);
      expect(chosen.singlesLeft).toEqual({ severity1: 0, severity2: 0 });
      expect(more).toBeNull();
      expect(frontier[0]).toMatchObject({ minutes: 0, money: 0 });
      const left = frontier.map(({ singlesLeft }) => singlesLeft.severity1);
      expect(left).toEqual([...left].sort((a, b) => b - a));
      expect(left.at(-1)).toBe(0);
    }
  });

  it('fitted in the kart file take the single point away, and are offered no more', () => {
    const [kart] = templateKarts();
    if (!kart) throw new Error('there must be a template');
    const { chosen } = secondRetentions(kart, none, ask, { minutes: 6 });
    const [first] = chosen.fittings;
    if (!first) throw new Error('six minutes must fit something');
    const [part = '', joint = ''] = first.joint.split('/');
    const then = kartFrom(
      `template: six-speed gearbox\nparts: { ${part}: { joints: { ${joint}: { second: ${first.retention} } } } }\n`,
    );
    const singles = (of: typeof kart) =>
      weakLinks(of, none, ask).hazards.flatMap(({ singlePoints }) =>
        singlePoints.filter(({ sort }) => sort === 'joint').map(({ joint: id }) => id),
      );
    expect(singles(kart)).toContain(first.joint);
    expect(singles(then)).not.toContain(first.joint);
    expect(secondRetentions(then, none, ask).candidates.some(({ joint: id }) => id === first.joint)).toBe(false);
  });
});

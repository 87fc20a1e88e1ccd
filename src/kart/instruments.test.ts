import { describe, expect, test } from 'vitest';
import { readLibrary } from './index.ts';

const read = (text: string) =>
  readLibrary({ kinds: {}, templates: {}, rules: {}, instruments: { 'bench.yaml': text } });

describe('the list of instruments', () => {
  test('is read with its steps in SI; a scale error may be a share of the reading', () => {
    const { instruments, problems } = read(`
tape: { resolution: 1 mm, in inches: 1/16 in, scale error: 0.7 mm, reads: twice, source: common practice }
torque wrench: { resolution: 0.5 N·m, scale error: 4 %, source: common practice }
`);
    expect(problems).toEqual([]);
    expect(instruments.tape).toMatchObject({ resolution: { si: 0.001 }, inches: { si: 0.0254 / 16 }, ends: 2 });
    expect(instruments['torque wrench']).toMatchObject({ scaleError: { si: 0.04, dimension: 'ratio' }, ends: 1 });
  });

  test('a bare number, a scale of another kind, a step of nothing and a key that is not known are told', () => {
    const told = (text: string) => read(text).problems.map(one => one.path);
    expect(told('rule: { resolution: 1, scale error: 0.1 mm, source: x }')).toContain('rule > resolution');
    expect(told('rule: { resolution: 1 mm, scale error: 0.1 bar, source: x }')).toEqual(['rule > scale error']);
    expect(told('rule: { resolution: 0 mm, scale error: 0.1 mm, source: x }')).toEqual(['rule > resolution']);
    expect(told('rule: { resolution: 1 mm, scale eror: 0.1 mm, source: x }').length).toBeGreaterThan(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tyres } from './tyres.ts';

type Over = Readonly<Record<string, unknown>>;
const answer = (input: unknown) => {
  const given = tyres.ask(input);
  if (given.kind !== 'answer') throw new Error(JSON.stringify(given.problems));
  return given;
};
const paths = (input: unknown) => {
  const given = tyres.ask(input);
  if (given.kind !== 'problems') throw new Error(given.say.join(' '));
  return given.problems.map(({ path }) => path);
};
const remedy = (input: unknown): string => {
  const given = tyres.ask(input);
  return given.kind === 'problems' ? given.problems.map(p => `${p.expected} ${p.remedy}`).join(' ') : '';
};
const plain: Over = {
  'ambient pressure': '1013 hPa',
  'cold temperature': '20 °C',
  'hot temperature': '60 °C',
  wanted: [{ tyre: 'rear', hot: '0.877 bar' }],
};
const example = tyres.example as Over;
const run = (example.record as readonly Over[])[0] as Over;

describe('a question about tyre pressures', () => {
  it('says what to set cold, at which temperature, and by which way it knows', () => {
    // 0.65 bar at 20 °C reads 0.877 at 60 °C: worked outside the project
    const { say, figures } = answer(plain);
    expect(figures['cold rear']?.text).toBe('0.65 bar');
    expect(say[0]).toContain('set 0.65 bar cold at 20 °C for 0.877 bar hot');
    expect(say[0]).toContain("not from this kart's runs");
    expect(say.join(' ')).toContain('Caution: a tyre under pressure can burst');
  });
  it('answers in the unit it was asked in', () => {
    const psi = answer({ ...plain, wanted: [{ tyre: 'rear', hot: '12.7 psi' }] });
    expect(psi.figures['cold rear']?.text).toBe('9.4 psi');
  });
  it('answers from the kart’s own runs before the gas law, with how far it may be off', () => {
    const { say, figures } = answer(example);
    expect(say[1]).toMatch(/^Rear: set 0\.58 bar .* 0\.56 bar to 0\.60 bar\. From 5 runs/);
    expect(figures['similar runs rear']?.text).toBe('5');
  });
  it('says not known where neither says how hot the air gets', () => {
    const { 'hot temperature': _, ...rest } = plain;
    expect(answer(rest).say[0]).toContain('Rear: cold pressure not known.');
  });
  it('never says less than the least allowed without saying so', () => {
    expect(answer({ ...plain, 'least pressure': '0.70 bar' }).say.join(' ')).toContain('Set 0.70 bar, not less');
  });
  it('adds what liquid water adds: 0.29 bar more hot for the same cold at 70 °C', () => {
    const wet = answer({ ...plain, 'hot temperature': '70 °C', water: 'liquid', 'tyre volume': '6 l' });
    expect(wet.figures['rise by liquid water']?.text).toBe('0.28 bar');
    expect(wet.figures['water that fills it with vapour']?.text).toBe('1.2 g');
  });
  it('carries a set pressure to another place', () => {
    const there = {
      'set elsewhere': { gauge: '0.65 bar', 'ambient pressure': '955 hPa' },
      'ambient pressure': '1020 hPa',
    };
    expect(answer(there).figures['gauge here']?.text).toBe('0.58 bar'); // 0.585, worked outside the project
  });
});

describe('a pressure that cannot be is asked about', () => {
  const hot = (text: string) => ({ ...plain, wanted: [{ tyre: 'rear', hot: text }] });
  it('a gauge at 0, above 4 bar, or with the air around in it', () => {
    for (const text of ['0 bar', '-0.2 bar', '4.5 bar', '87 psi']) {
      expect(paths(hot(text))).toEqual(['wanted/0/hot']);
      expect(remedy(hot(text))).toContain('is it absolute');
    }
    expect(paths(hot('20 psia'))).toEqual(['wanted/0/hot']);
    expect(answer(hot('1.9 bar')).notes.join(' ')).toContain('Is it absolute?');
  });
  it('a gauge reading given for the air around, and a forecast’s figure high up', () => {
    expect(paths({ ...plain, 'ambient pressure': '0.40 bar' })).toEqual(['ambient pressure']);
    const high = { ...plain, 'ambient pressure': '1013 hPa', 'track height': '600 m' };
    expect(answer(high).notes.join(' ')).toContain('Is it the sea level figure of a forecast?');
    expect(answer({ ...high, 'ambient pressure': '943 hPa' }).notes.join(' ')).not.toContain('sea level figure of a');
  });
});

describe('tyre readings that cannot be', () => {
  const at = (over: Over): Over => ({ ...example, record: [{ ...run, ...over }] });
  it('are refused one by one: cold over hot, °F for °C, no laps, a rise that air cannot make', () => {
    expect(paths(at({ cold: '0.90 bar' }))).toEqual(['record/0/hot']);
    expect(paths(at({ 'cold temperature': '70 °C' }))).toEqual(['record/0/cold temperature']);
    expect(remedy(at({ 'track temperature': '95 °C' }))).toContain('°F');
    expect(paths(at({ laps: '0' }))).toEqual(['record/0/laps']);
    expect(paths(at({ hot: '1.9 bar' }))).toEqual(['record/0/hot']);
  });
  it('ask for what decides which days are alike', () => {
    const { surface: _s, laps: _l, 'track temperature': _t, ...rest } = example;
    expect(paths(rest)).toEqual(['surface', 'laps', 'track temperature']);
    expect(paths({ ...example, record: [{ ...run, surface: undefined }] })).toEqual(['record/0/surface']);
  });
  it('ask what is wanted when nothing is, and refuse a tyre and its axle together', () => {
    expect(paths({})).toEqual(['wanted']);
    const twice = [
      { tyre: 'rear', hot: '0.8 bar' },
      { tyre: 'rear left', hot: '0.8 bar' },
    ];
    expect(paths({ ...plain, wanted: twice })).toEqual(['wanted/1/tyre']);
  });
  it('come all at once', () => {
    const much = {
      ...plain,
      'cold temperature': '68 °C',
      'ambient pressure': '30 bar',
      wanted: [{ tyre: 'rear', hot: '9 bar' }],
    };
    expect(paths(much)).toEqual(expect.arrayContaining(['wanted/0/hot', 'ambient pressure', 'cold temperature']));
  });
  it('are not tyres 10 % apart, nor half a turn', () => {
    const rear = { 'rolled left': '868 mm', 'rolled right': '1000 mm', turns: '1', 'contact track': '1140 mm' };
    expect(paths({ rear })).toEqual(['rear/rolled right']);
    expect(paths({ rear: { ...rear, 'rolled right': '872 mm', turns: '0.5' } })).toContain('rear/turns');
  });
});

describe('a question about stagger, treads and the set', () => {
  const rear = { 'rolled left': '868 mm', 'rolled right': '872 mm', turns: '1', 'contact track': '1140 mm' };
  it('names the larger tyre and the side the axle rolls to, left and right exchanged', () => {
    expect(answer({ rear }).say[1]).toContain(
      'Rear right is 4.0 mm larger: the axle by itself rolls to the left, round 248 m',
    );
    const other = { ...rear, 'rolled left': '872 mm', 'rolled right': '868 mm' };
    expect(answer({ rear: other }).say[1]).toContain(
      'Rear left is 4.0 mm larger: the axle by itself rolls to the right',
    );
  });
  it('says that it cannot tell where the measuring is coarser than the stagger', () => {
    const coarse = { ...rear, 'rolled left': '868 mm ± 3 mm', 'rolled right': '872 mm ± 3 mm' };
    expect(answer({ rear: coarse }).say[1]).toContain('No stagger that this measuring can tell');
  });
  it('calls a tread a trend, and a set of unknown age not known', () => {
    const treads = [{ tyre: 'front left', inside: '70 °C', middle: '60 °C', outside: '58 °C' }];
    const { say, notes } = answer({ treads, set: { 'heat cycles': '2' } });
    expect(say[0]).toContain(
      'Front left: the middle is 4.0 °C cooler than the edges: pressure rather low; inside 12.0 °C hotter.',
    );
    expect(say[0]).toContain('more than the usual');
    expect(notes.join(' ')).toContain('trend');
    expect(say[1]).toContain('not known: age not written down');
  });
  it('never throws, whatever comes, and never promises', () => {
    const text = fc.tuple(fc.double(), fc.constantFrom('bar', 'hPa', '°C', 'mm', 'laps')).map(([n, u]) => `${n} ${u}`);
    fc.assert(
      fc.property(fc.anything(), fc.dictionary(fc.constantFrom(...Object.keys(example)), text), (any, keyed) => {
        expect(['answer', 'problems']).toContain(tyres.ask(any).kind);
        const given = tyres.ask({ ...example, ...keyed });
        expect(JSON.stringify(given)).not.toMatch(/\bsafe/i);
        if (given.kind === 'answer') expect(given.say.join(' ')).not.toMatch(/NaN|Infinity/);
      }),
    );
  });
});

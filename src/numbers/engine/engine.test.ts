import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { engine } from './engine.ts';

type Over = Readonly<Record<string, unknown>>;
const CRANK = { stroke: '54.5 mm', rod: '110 mm', bore: '54 mm' };
const ask = (question: Over): Answer => {
  const answer = engine.ask(question);
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const wrong = (question: Over): readonly InputProblem[] => {
  const answer = engine.ask(question);
  if (answer.kind !== 'problems') throw new Error('it was answered');
  for (const { expected, got, remedy } of answer.problems)
    for (const text of [expected, got, remedy]) expect(text.trim()).not.toBe('');
  return answer.problems;
};
const paths = (question: Over): readonly string[] => wrong(question).map(({ path }) => path);
const si = (answer: Answer, name: string): number => answer.figures[name]?.si ?? Number.NaN;
const said = (answer: Answer): string => [...answer.say, ...answer.notes].join(' ');
const squish = (left: string, right: string, more: Over = {}) => ({ squish: { left, right, ...more } });
const read = (ran: string, compression: string, more: Over = {}) => ({
  ran,
  compression,
  gauge: 'A',
  engine: 'hot',
  throttle: 'held open',
  ...more,
});

describe('what is not given', () => {
  it('is not answered: squish alone has no ports, no pipe and no compression', () => {
    const answer = ask(squish('0.85 mm', '0.9 mm'));
    expect(Object.keys(answer.figures).toSorted()).toEqual([
      'least squish',
      'right wider than left',
      'tightest squish, left to right',
    ]);
    expect(said(answer)).toContain('a tilt the other way is not known');
  });
  it('is asked for all at once, where it is needed', () => {
    expect(paths({ ignition: { drop: '1.6 mm' }, power: '28 kW' }).toSorted()).toEqual([
      'bore',
      'engine speed',
      'rod',
      'stroke',
    ]);
    expect(paths({})).toEqual(['the whole input']);
    expect(paths(CRANK)).toEqual(['the whole input']);
  });
  it('is never guessed: from where a roof was measured, how far the liquid stood, how hot the gas is', () => {
    expect(paths({ ...CRANK, ports: { exhaust: '25 mm' } })).toEqual(['ports/measured from']);
    expect(paths({ ...CRANK, chamber: { liquid: '12 ml' } })).toEqual(['chamber/filled to']);
    expect(paths({ ...CRANK, chamber: { liquid: '15 ml', 'filled to': 'top of the plug thread' } })).toEqual([
      'chamber/plug thread',
    ]);
    expect(paths({ pipe: { 'tuned speed': '12000 rpm', 'exhaust duration': '196°' } })).toEqual([
      'pipe/gas temperature',
    ]);
    const deck = { exhaust: '25 mm', 'measured from': 'top of the cylinder' };
    expect(paths({ ...CRANK, ports: deck })).toEqual(['ports/crown below the cylinder top']);
    expect(paths({ squish: { left: '0.8 mm' } })).toEqual(['squish/right']);
    expect(paths({ ...CRANK, ignition: { drop: '1.6 mm' }, 'gudgeon offset': '0.5 mm' })).toEqual(['offset toward']);
  });
});

describe('what cannot be', () => {
  it('is refused: rod and stroke exchanged, half a stroke, an exhaust below the transfer, a roof below bottom', () => {
    const ignition = { drop: '1.6 mm' };
    expect(paths({ stroke: '54.5 mm', rod: '27 mm', ignition })).toContain('rod');
    expect(paths({ ...CRANK, stroke: '5.45 mm', ignition })).toContain('stroke');
    const ports = { exhaust: '41 mm', transfer: '25 mm', 'measured from': 'crown at top' };
    expect(paths({ ...CRANK, ports })).toEqual(['ports/transfer']);
    expect(paths({ ...CRANK, ports: { exhaust: '60 mm', 'measured from': 'crown at top' } })).toEqual([
      'ports/exhaust',
    ]);
  });
  it('is refused: a bare number, a pressure of nothing, absolute pressure, timing given twice', () => {
    expect(paths({ ...CRANK, ignition: { drop: 1.6 } })).toEqual(['ignition/drop']);
    expect(paths({ 'compression readings': [read('1 h', '0 bar')] })).toEqual(['compression readings/0/compression']);
    expect(paths({ 'compression readings': [read('1 h', '30 inHg')] })).toEqual(['compression readings/0/compression']);
    expect(paths({ ...CRANK, ignition: { drop: '1.6 mm', angle: '18°' } })).toEqual(['ignition/drop']);
    expect(paths({ 'compression readings': [] })).toEqual(['compression readings']);
    expect(paths(squish('-0.8 mm', '0.9 mm'))).toEqual(['squish/left']);
  });
});

describe('ignition', () => {
  it('is the same by drop and by angle, and a tilted gauge runs further than the piston', () => {
    const byDrop = ask({ ...CRANK, ignition: { drop: '2 mm' } });
    const byAngle = ask({ ...CRANK, ignition: { angle: '19.805156868153933°' } });
    expect(si(byAngle, 'piston below top at ignition')).toBeCloseTo(si(byDrop, 'piston below top at ignition'), 9);
    const tilted = ask({ ...CRANK, ignition: { drop: '2 mm', 'gauge tilt': '30°' } });
    expect(si(tilted, 'piston below top at ignition')).toBeCloseTo(0.002 * Math.cos(Math.PI / 6), 12);
    expect(si(tilted, 'gauge reading at ignition')).toBeCloseTo(0.002, 12);
  });
  it('warns that more advance can seize the engine, and that it is turned by hand with the plug lead off', () => {
    const text = said(ask({ ...CRANK, ignition: { drop: '2 mm' } }));
    expect(text).toMatch(/seize/);
    expect(text).toMatch(/plug lead off/);
    expect(text).not.toMatch(/\bsafe\b/i);
  });
});

describe('a base gasket', () => {
  const whole = {
    ...CRANK,
    ports: { exhaust: '25.5 mm', transfer: '41 mm', 'measured from': 'crown at top' },
    chamber: { liquid: '12.8 ml', 'filled to': 'under the plug thread' },
    ...squish('0.9 mm', '0.9 mm'),
  };
  it('moves ports, squish and compression together', () => {
    const answer = ask({ ...whole, 'base gasket change': '0.2 mm' });
    expect(si(answer, 'exhaust duration with the new gasket')).toBeGreaterThan(si(answer, 'exhaust duration'));
    expect(si(answer, 'tightest squish with the new gasket, left to right')).toBeCloseTo(0.0011, 12);
    expect(si(answer, 'compression full with the new gasket')).toBeLessThan(si(answer, 'compression full'));
  });
  it('taken out so far that the squish closes up is not to run', () => {
    const answer = ask({ ...whole, 'base gasket change': '-0.3 mm' });
    expect(said(answer)).toMatch(/With the new gasket: squish is 0.60 mm.*not to run/);
  });
});

describe('squish', () => {
  it('under the least is not to run, and nothing it says asks for less', () => {
    for (const left of ['0.5 mm', '0.74 mm', '0.76 mm', '0.9 mm', '2 mm']) {
      const answer = ask(squish(left, '2 mm'));
      expect(said(answer)).not.toMatch(/close it|tighter is|make it smaller|reduce|thinner/i);
      expect(/not to run/.test(said(answer))).toBe(Number.parseFloat(left) < 0.77);
    }
    expect(said(ask(squish('0.8 mm', '0.8 mm', { least: '0.9 mm' })))).toMatch(/not to run/);
  });
  it('says which side is wider, from front to back too', () => {
    const answer = ask({ squish: { front: '0.8 mm', back: '1 mm' } });
    expect(said(answer)).toContain('the back is 0.20 mm wider than the front');
    expect(answer.figures['back wider than front']?.text).toBe('0.20 mm');
  });
});

describe('speed, power and pipe', () => {
  it('a mean pressure above 14 bar asks to look at what was written', () => {
    const power = (text: string) => said(ask({ ...CRANK, 'engine speed': '12500 rpm', power: text }));
    expect(power('60 kW')).toMatch(/Check power, speed, bore and stroke/);
    expect(power('30 kW')).not.toMatch(/Check power/);
  });
  it('a pipe takes the duration of the exhaust roof, and says that lean means seizure', () => {
    const pipe = { 'tuned speed': '12000 rpm', 'gas temperature': '450 °C' };
    const ports = { exhaust: '25.5 mm', 'measured from': 'crown at top' };
    const byRoof = ask({ ...CRANK, ports, pipe });
    const degrees = (si(byRoof, 'exhaust duration') * 180) / Math.PI;
    const byAngle = ask({ pipe: { ...pipe, 'exhaust duration': `${degrees}°` } });
    const name = 'tuned length from the piston face';
    expect(si(byAngle, name)).toBeCloseTo(si(byRoof, name), 9);
    expect(said(byRoof)).toMatch(/Lean means seizure/);
  });
  it('cones that have no room in the length are said', () => {
    const cones = { 'header diameter': '40 mm', 'diffuser half-angle': '3°', 'baffle half-angle': '8°' };
    const pipe = { 'tuned speed': '14000 rpm', 'exhaust duration': '180°', 'wave speed': '500 m/s', ...cones };
    expect(said(ask({ pipe }))).toContain('no room');
  });
});

describe('compression readings', () => {
  it('down a tenth say that the top end is due, with what was left out and the caution', () => {
    const list = [read('1 h', '10 bar'), read('3 h', '12 bar', { gauge: 'B' }), read('9 h', '8.8 bar')];
    const answer = ask({ 'compression readings': list });
    expect(answer.say[1]).toMatch(/top end is due/);
    expect(said(answer)).toMatch(/Left out: 1/);
    expect(said(answer)).toMatch(/plug lead earthed/);
  });
  it('cold say nothing, and ask to be read again', () => {
    const answer = ask({ 'compression readings': [read('1 h', '10 bar'), read('2 h', '9 bar', { engine: 'cold' })] });
    expect(answer.say[0]).toMatch(/Read it again/);
    expect(answer.figures).toEqual({});
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignment } from './alignment.ts';
import { axlePlace, fourLengths } from './square.ts';
import { halfTurn, stringBias, toeAngle, toeAtDiameter, toeFromString, toeTotal } from './toe.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.record({ wheelbase: between(0.9, 1.3), yaw: between(-0.03, 0.03), offset: between(-0.03, 0.03) });
const marks = fc.record({ kingpins: between(0.5, 1), axle: between(0.5, 1.1) });

describe('toe', () => {
  it('goes to an angle and back at the same diameter, and grows with the diameter at the same angle', () => {
    fc.assert(
      fc.property(between(-0.02, 0.02), between(0.1, 1), (total, diameter) => {
        const angle = toeAngle(total, diameter);
        expect(toeTotal(angle, diameter)).toBeCloseTo(total, 12);
        expect(toeTotal(angle, 2 * diameter)).toBeCloseTo(2 * total, 12);
        expect(toeAtDiameter(toeAtDiameter(total, diameter, 0.26), 0.26, diameter)).toBeCloseTo(total, 12);
        expect(toeAngle(-total, diameter)).toBeCloseTo(-angle, 12);
      }),
    );
  });
  it('is 0.33° for 1.5 mm a wheel over a tyre and 0.63° over a rim', () => {
    // 1.5 mm over 260 mm and over 136.2 mm, worked outside the project
    const degrees = (diameter: number) => (toeAngle(0.003, diameter) * 180) / Math.PI;
    expect(degrees(0.26)).toBeCloseTo(0.33, 2);
    expect(degrees(0.1362)).toBeCloseTo(0.63, 2);
  });
  it('from two strings that are yawed as a pair keeps its total', () => {
    fc.assert(
      fc.property(between(-0.005, 0.005), between(-0.005, 0.005), between(-0.003, 0.003), (left, right, skew) => {
        const D = 0.26;
        const tilt = stringBias(skew, 1.5);
        const gap = (angle: number) => 0.05 + D * Math.tan(angle);
        const total = toeFromString(gap(left + tilt), 0.05, D) + toeFromString(gap(right - tilt), 0.05, D);
        expect(total).toBeCloseTo(left + right, 9);
      }),
    );
  });
  it('is free of rim run-out in the mean of two readings half a turn apart', () => {
    fc.assert(
      fc.property(between(-0.01, 0.01), between(-0.003, 0.003), (toe, runOut) => {
        const { mean, runOut: found } = halfTurn(toe + runOut, toe - runOut);
        expect(mean).toBeCloseTo(toe, 12);
        expect(found).toBeCloseTo(Math.abs(runOut), 12);
      }),
    );
  });
});

describe('the place of the axle', () => {
  it('comes back from its four lengths, which then fit one figure', () => {
    fc.assert(
      fc.property(place, marks, (p, m) => {
        const found = axlePlace(fourLengths(p, m), m);
        expect(found.wheelbase).toBeCloseTo(p.wheelbase, 9);
        expect(found.yaw).toBeCloseTo(p.yaw, 9);
        expect(found.offset).toBeCloseTo(p.offset, 9);
        expect(found.misfit).toBeCloseTo(0, 9);
      }),
    );
  });
  it('is mirrored when left and right are exchanged, and scales with the kart', () => {
    fc.assert(
      fc.property(place, marks, between(0.2, 5), (p, m, k) => {
        const { sideLeft, sideRight, diagonalFromLeft, diagonalFromRight } = fourLengths(p, m);
        const swapped = axlePlace(
          {
            sideLeft: sideRight,
            sideRight: sideLeft,
            diagonalFromLeft: diagonalFromRight,
            diagonalFromRight: diagonalFromLeft,
          },
          m,
        );
        expect(swapped.yaw).toBeCloseTo(-p.yaw, 9);
        expect(swapped.offset).toBeCloseTo(-p.offset, 9);
        const large = fourLengths(
          { wheelbase: k * p.wheelbase, yaw: p.yaw, offset: k * p.offset },
          { kingpins: k * m.kingpins, axle: k * m.axle },
        );
        expect(large.sideLeft).toBeCloseTo(k * sideLeft, 9);
      }),
    );
  });
  it('can be turned with diagonals alike, when it also stands to a side', () => {
    const m = { kingpins: 0.8, axle: 1 };
    const lengths = fourLengths({ wheelbase: 1.045, yaw: 0.002, offset: -0.00116 }, m);
    expect(Math.abs(lengths.diagonalFromLeft - lengths.diagonalFromRight)).toBeLessThan(2e-5);
    expect(axlePlace(lengths, m).yaw).toBeCloseTo(0.002, 9);
  });
});

const answer = (input: unknown) => {
  const given = alignment.ask(input);
  if (given.kind === 'problems') throw new Error(JSON.stringify(given.problems));
  return given;
};
const problems = (input: unknown) => {
  const given = alignment.ask(input);
  if (given.kind === 'answer') throw new Error(given.say.join(' '));
  return given.problems;
};
const square = {
  'side left': '1050.64 mm ± 0.1 mm',
  'side right': '1048.91 mm ± 0.1 mm',
  'diagonal from left': '1378.48 mm ± 0.1 mm',
  'diagonal from right': '1379.80 mm ± 0.1 mm',
  'kingpin spacing': '800 mm ± 0.1 mm',
  'axle mark spacing': '1000 mm ± 0.1 mm',
};
const rods = {
  'wanted toe-in': '-2 mm',
  'wanted toe diameter': '260 mm',
  'steering arm': '95 mm',
  'steering arms': 'behind',
  'rod thread pitch': '1.25 mm',
  'rod threads': 'left and right',
};

describe('a question about toe', () => {
  it('says toe with its diameter, what to do to the rods, and the caution of steering work', () => {
    const { say } = answer({ 'toe-in total': '2 mm', 'measuring diameter': '260 mm', ...rods });
    expect(say[0]).toBe('Both wheels together stand 2.0 mm toe-in at 260 mm diameter: 0.44°.');
    expect(say.join(' ')).toMatch(/Shorten each tie rod by 0.73 mm, 0.29 turns/);
    expect(say.join(' ')).toContain('Caution');
  });
  it('takes toe-out as toe-in below nothing, and never both', () => {
    const { 'wanted toe-in': _, ...rest } = rods;
    const out = answer({ 'toe-out total': '-2 mm', 'measuring diameter': '260 mm', ...rest, 'wanted toe-out': '2 mm' });
    expect(out).toEqual(answer({ 'toe-in total': '2 mm', 'measuring diameter': '260 mm', ...rods }));
    expect(out.say[1]).toBe('Wanted is 2.0 mm toe-out at 260 mm; there it is 2.0 mm toe-in: 4.0 mm more toe-out.');
    const both = { 'toe-out total': '2 mm', 'toe-in total': '-2 mm', 'measuring diameter': '260 mm' };
    expect(problems(both).map(p => p.path)).toEqual(['toe-out total']);
  });
  it('turns the rods the other way when the arms are ahead, and twice as far with one thread', () => {
    const behind = answer({ 'toe-in total': '2 mm', 'measuring diameter': '260 mm', ...rods }).figures;
    const ahead = answer({
      'toe-in total': '2 mm',
      'measuring diameter': '260 mm',
      ...rods,
      'steering arms': 'ahead',
    }).figures;
    const one = answer({
      'toe-in total': '2 mm',
      'measuring diameter': '260 mm',
      ...rods,
      'rod threads': 'one',
    }).figures;
    expect(ahead['each rod longer by']?.si).toBeCloseTo(-(behind['each rod longer by']?.si ?? 0), 12);
    expect(one['turns of each rod']?.si).toBeCloseTo(2 * (behind['turns of each rod']?.si ?? 0), 12);
  });
  it('reads the same toe from rims, from each wheel and from strings', () => {
    const of = (input: Record<string, string>) =>
      answer({ ...input, 'measuring diameter': '260 mm' }).figures['toe-in total']?.si;
    const rims = of({ 'front apart': '1000 mm', 'rear apart': '1002 mm' });
    expect(of({ 'toe-in total': '2 mm' })).toBeCloseTo(rims ?? 0, 9);
    expect(of({ 'toe-in left': '1 mm', 'toe-in right': '1 mm' })).toBeCloseTo(rims ?? 0, 9);
    const strings = {
      'string front gap left': '51 mm',
      'string rear gap left': '50 mm',
      'string front gap right': '51 mm',
      'string rear gap right': '50 mm',
    };
    expect(of(strings)).toBeCloseTo(rims ?? 0, 6);
  });
  it('cancels rim run-out by half a turn, and asks for it when it was not done', () => {
    const turned = answer({ ...alignment.example });
    expect(turned.figures['rim run-out']?.text).toBe('0.20 mm');
    expect(answer({ 'toe-in total': '2 mm', 'measuring diameter': '260 mm' }).notes.join(' ')).toContain('half a turn');
  });
  it('says when the uncertainty is larger than the toe', () => {
    const { notes } = answer({
      'front apart': '1000 mm ± 1 mm',
      'rear apart': '1000.5 mm ± 1 mm',
      'measuring diameter': '255 mm',
    });
    expect(notes.join(' ')).toContain('not even in or out is sure');
  });
  it('never takes millimetres without their diameter, nor two ways at once, nor a toe that cannot be', () => {
    expect(problems({ 'toe-in total': '2 mm' })[0]).toMatchObject({ path: 'measuring diameter' });
    expect(
      problems({ 'toe-in total': '2 mm', 'wanted toe-in': '2 mm', 'measuring diameter': '-260 mm' }).map(p => p.path),
    ).toEqual(['wanted toe diameter', 'measuring diameter', 'measuring diameter']);
    expect(
      problems({
        'toe-in total': '2 mm',
        'toe-in left': '1 mm',
        'toe-in right': '1 mm',
        'measuring diameter': '260 mm',
      })[0]?.got,
    ).toBe('2 ways');
    expect(problems({ 'front apart': '1000 mm', 'rear apart': '42 in', 'measuring diameter': '10 in' })[0]?.path).toBe(
      'rear apart',
    );
    expect(problems({}).length).toBe(1);
  });
});

describe('a question about squareness', () => {
  it('says which end stands back and by how much, and that the frame may need a qualified person', () => {
    const { say, figures } = answer(square);
    expect(figures['axle yaw']?.text).toBe('0.100°');
    expect(say.join(' ')).toContain('left end of the axle stands 1.7 mm too far back');
    expect(say.join(' ')).toContain('qualified person');
    expect(figures['axle offset']?.si).toBeCloseTo(0, 4);
  });
  it('wants sides as well as diagonals, and says why', () => {
    const { 'side left': _l, 'side right': _r, ...diagonals } = square;
    expect(problems(diagonals).map(p => p.path)).toEqual(['side left', 'side right']);
    expect(problems(diagonals)[0]?.expected).toContain('diagonals alone');
  });
  it('refuses lengths of no figure, and doubts those that nearly fit', () => {
    expect(problems({ ...square, 'side left': '1800 mm' })[0]).toMatchObject({ path: 'side left' });
    const { notes } = answer({ ...square, 'side left': '1060 mm ± 0.1 mm', 'side right': '1058 mm ± 0.1 mm' });
    expect(notes.join(' ')).toContain('do not belong to one figure');
  });
  it('never throws, whatever comes, and never promises', () => {
    const keys = [
      ...Object.keys(square),
      ...Object.keys(rods),
      ...Object.keys(alignment.example),
      'toe-in left',
      'toe-in total',
    ];
    const text = fc.tuple(fc.double(), fc.constantFrom('mm', 'in', '°')).map(([n, u]) => `${n} ${u}`);
    fc.assert(
      fc.property(fc.anything(), fc.dictionary(fc.constantFrom(...keys), text), (any, keyed) => {
        expect(['answer', 'problems']).toContain(alignment.ask(any).kind);
        expect(JSON.stringify(alignment.ask({ ...square, ...keyed }))).not.toMatch(/\bsafe/i);
      }),
    );
  });
});

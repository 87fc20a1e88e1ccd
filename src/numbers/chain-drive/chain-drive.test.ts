import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { chainDrive } from './chain-drive.ts';
import { chainPull, chainSpeed, chainWear, moveForSlack, ownPull, ripple, stretchLimit } from './condition.ts';
import { centreFor, chainLinks, lengthOnCircles, linksAround, pitchCircle, wrapOf } from './length.ts';
import { CHAIN_SIZES, CHAINS, seemToFit } from './sizes.ts';

type Over = Readonly<Record<string, unknown>>;
const question = (over: Over): Over =>
  Object.fromEntries(Object.entries({ ...chainDrive.example, ...over }).filter(([, value]) => value !== null));
const ask = (over: Over = {}): Answer => {
  const answer = chainDrive.ask(question(over));
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const said = (over: Over = {}): string => ask(over).say.join(' ');
const noted = (over: Over = {}): string => ask(over).notes.join(' ');
const problem = (over: Over, path: string): string => {
  const answer = chainDrive.ask(question(over));
  if (answer.kind !== 'problems') throw new Error('it was answered');
  const found: InputProblem | undefined = answer.problems.find(each => each.path === path);
  return found ? `${found.expected}; ${found.got}; ${found.remedy}` : `no problem at ${path}`;
};
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rounds = fc.record({ front: fc.integer({ min: 9, max: 25 }), rear: fc.integer({ min: 26, max: 90 }) });

describe('the length of a chain', () => {
  it('gives the distance back that it was made from', () => {
    fc.assert(
      fc.property(rounds, size(30, 90), (round, centre) => {
        expect(centreFor(round, linksAround(round, centre)) / centre).toBeCloseTo(1, 9);
      }),
    );
  });
  it('is nearly that of straight runs and arcs on the pitch circles', () => {
    fc.assert(
      fc.property(rounds, size(35, 90), (round, centre) => {
        expect(linksAround(round, centre)).toBeCloseTo(lengthOnCircles(round, 1, centre), 0);
      }),
    );
  });
  it('does not know which sprocket is in front', () => {
    fc.assert(
      fc.property(rounds, size(30, 90), ({ front, rear }, centre) => {
        expect(linksAround({ front: rear, rear: front }, centre)).toBeCloseTo(linksAround({ front, rear }, centre), 9);
        expect(wrapOf({ front: rear, rear: front }, 1, centre)).toBeCloseTo(wrapOf({ front, rear }, 1, centre), 9);
      }),
    );
  });
  it('grows by two links for a pitch of distance, less what the sprockets differ (slope against finite difference)', () => {
    fc.assert(
      fc.property(rounds, size(30, 90), (round, centre) => {
        const slope = (linksAround(round, centre + 1e-4) - linksAround(round, centre - 1e-4)) / 2e-4;
        expect(slope).toBeCloseTo(2 - ((round.rear - round.front) / (2 * Math.PI * centre)) ** 2, 5);
      }),
    );
  });
  it('comes out as even numbers on either side, the smaller move first, and is taut there', () => {
    fc.assert(
      fc.property(rounds, size(35, 90), (round, centre) => {
        const { exact, choices } = chainLinks({ round, pitch: 0.0127, centre: centre * 0.0127 });
        expect(choices.map(({ links }) => links % 2)).toEqual([0, 0]);
        const [a, b] = choices;
        expect(Math.abs(a?.move ?? 1)).toBeLessThanOrEqual(Math.abs(b?.move ?? 0));
        expect(Math.abs((a?.links ?? 0) - exact)).toBeLessThanOrEqual(1.1);
        expect(linksAround(round, (a?.centre ?? 0) / 0.0127)).toBeCloseTo(a?.links ?? 0, 6);
      }),
    );
  });
  it('that the slots reach comes before one that they do not; without slots nobody knows', () => {
    const asked = { round: { front: 17, rear: 25 }, pitch: 0.0127, centre: 0.23 };
    expect(chainLinks(asked).choices.map(c => [c.links, c.fits])).toEqual([
      [58, 'not known'],
      [56, 'not known'],
    ]);
    expect(chainLinks({ ...asked, slot: { away: 0.002, toward: 0.01 } }).choices.map(c => [c.links, c.fits])).toEqual([
      [56, 'yes'],
      [58, 'no'],
    ]);
  });
  it('wraps a sprocket by half where both are alike', () => {
    expect(wrapOf({ front: 20, rear: 20 }, 0.0127, 0.3)).toBeCloseTo(Math.PI, 12);
  });
  it('lies on circles that a pitch fits round as often as there are teeth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 100 }), size(0.005, 0.02), (teeth, pitch) => {
        expect(2 * teeth * Math.asin(pitch / pitchCircle(pitch, teeth))).toBeCloseTo(2 * Math.PI, 9);
      }),
    );
  });
});

describe('wear', () => {
  const read = { pitches: 20, pitch: 0.0127, largest: 25 };
  it('goes on below 1 %, is ordered from 1 % and replaced from 1.5 %', () => {
    const verdict = (stretch: number) => chainWear({ ...read, length: 0.254 * (1 + stretch) }).verdict;
    expect([0, 0.0099, 0.01, 0.0149, 0.015, 0.03].map(verdict)).toEqual([
      'goes on',
      'goes on',
      'order one',
      'order one',
      'replace',
      'replace',
    ]);
  });
  it('is judged by the worse end of the reading', () => {
    const length = 0.254 * 1.0145;
    expect(chainWear({ ...read, length }).verdict).toBe('order one');
    expect(chainWear({ ...read, length, half: 0.0003 }).verdict).toBe('replace');
  });
  it('that cannot be read is not known, never good', () => {
    expect(chainWear({ ...read, length: Number.NaN }).verdict).toBe('not known');
    expect(chainWear({ ...read, length: 0.254, half: Number.NaN }).verdict).toBe('not known');
  });
  it('is allowed less on a sprocket of many teeth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 200 }), teeth => {
        expect(stretchLimit(teeth)).toBeLessThanOrEqual(0.03);
        expect(stretchLimit(teeth + 1)).toBeLessThanOrEqual(stretchLimit(teeth));
      }),
    );
    expect(chainWear({ ...read, length: 0.254, largest: 160 }).limit).toBeCloseTo(0.0125, 12);
  });
});

describe('slack, pull, swing', () => {
  it('changes by the move that straight lines give', () => {
    fc.assert(
      fc.property(size(0.15, 0.5), size(0.004, 0.03), (centre, slack) => {
        // The lower run is straight; the upper one is longer by twice what the engine is nearer than taut.
        const nearer = moveForSlack(slack, 0, centre);
        const half = Math.sqrt(((centre + nearer * 2) / 2) ** 2 - (centre / 2) ** 2);
        expect((2 * half) / slack).toBeCloseTo(1, 2);
      }),
    );
    expect(moveForSlack(0.018, 0.0125, 0.23)).toBeGreaterThan(0); // slacker than wanted: away from the axle
    expect(moveForSlack(0.006, 0.0125, 0.23)).toBeLessThan(0);
  });
  it('pulls with the power that goes through it', () => {
    fc.assert(
      fc.property(size(100, 600), fc.integer({ min: 9, max: 20 }), size(1000, 40000), (rotation, teeth, power) => {
        const speed = chainSpeed({ rotation, teeth, pitch: 0.0127 });
        expect((chainPull(power, speed) * speed) / power).toBeCloseTo(1, 9);
        expect(ownPull(0.8, 2 * speed)).toBeCloseTo(4 * ownPull(0.8, speed), 6);
      }),
    );
  });
  it('swings less with more teeth', () => {
    for (let teeth = 8; teeth < 100; teeth++) expect(ripple(teeth + 1)).toBeLessThan(ripple(teeth));
  });
});

describe('the sizes', () => {
  it('know that 420 and 428 share a pitch and not a roller, and that 219 shares with none', () => {
    expect(seemToFit('428')).toContain('420');
    expect(seemToFit('219')).toEqual([]);
    expect(CHAINS.map(name => CHAIN_SIZES[name].pitch)).not.toContain(0.0079375);
    expect(noted()).toContain('420');
  });
});

describe('the question', () => {
  it('is answered with links, move, wear, slack, line, the clip and its second fixing, and the caution', () => {
    const text = said();
    expect(text).toContain('58 links: taut with the engine 4.4 mm away from the axle');
    expect(text).toContain('Cut 2 links');
    expect(text).toContain('closed end of the clip leads in the direction of travel, then a second fixing');
    expect(text).toContain('driver in the seat, engine bolts at their torque');
    expect(text).toContain('plug cap off, turn by hand only');
  });
  it('never offers half a link, and says when the slots do not reach', () => {
    expect(said({ 'room away': '1 mm', 'room toward': '1 mm' })).toContain('The slots do not reach there');
    expect(noted({ 'room away': null, 'room toward': null })).toContain('Whether the slots reach is not known');
    expect(said({ 'links now': '56' })).toContain('2 links too short');
    expect(said({ 'links now': '61' })).toContain('That is odd: count again');
  });
  it('says which way the engine goes for the slack, and why', () => {
    expect(said({ slack: '5 mm' })).toMatch(/too tight\. Move the engine toward the axle/);
    expect(said({ slack: '30 mm' })).toMatch(/too slack\. Move the engine away from the axle.*lock the axle/);
    expect(said({ slack: '12 mm' })).toContain('right.');
    expect(said({ slack: '30 mm', 'centre distance': null, 'room away': null, 'room toward': null })).toContain(
      'too slack',
    );
  });
  it('says the line within half a millimetre, near it, and out', () => {
    expect(said({ 'out of line': '0.4 mm' })).toContain('within 0.5 mm');
    expect(said({ 'out of line': '0.8 mm' })).toContain('bring it under');
    expect(said({ 'out of line': '1.5 mm' })).toContain('before it runs');
    expect(said({ 'out of line': null })).toContain('straight-edge or laser');
  });
  it('says what pulls, and that no strength was read where none was', () => {
    const pull = { power: '34 kW', 'front sprocket speed': '3300 rpm', 'chain mass': '0.6 kg' };
    expect(said(pull)).toMatch(/The chain pulls 2\d{3} N/);
    expect(noted(pull)).toContain('No tensile strength of 428');
    expect(noted({ ...pull, chain: '40' })).toContain('Least tensile strength');
  });
  it('is answered for chain and sprockets alone', () => {
    const bare = { chain: '219', 'front sprocket': '11', 'rear sprocket': '82' };
    const answer = chainDrive.ask(bare);
    expect(answer.kind).toBe('answer');
  });
});

describe('refused', () => {
  it('a measured length of another chain, with the chain it may be', () => {
    expect(problem({ chain: '219', 'measured length': '190.5 mm' }, 'measured length')).toContain('as of 35 chain');
    expect(problem({ 'measured length': '240 mm' }, 'measured length')).toContain('count the pitches');
  });
  it('sprockets that touch or do not exist, exchanged ones, and counts that are none', () => {
    expect(problem({ 'centre distance': '80 mm' }, 'centre distance')).toContain('would touch');
    expect(problem({ 'rear sprocket': '25.5' }, 'rear sprocket')).toContain('a whole number of teeth');
    expect(problem({ 'front sprocket': '30' }, 'front sprocket')).toContain('exchanged?');
    expect(problem({ 'pitches measured': '2.5' }, 'pitches measured')).toContain('20 pitches are 21 pins');
    expect(problem({ 'links now': '7.5' }, 'links now')).toContain('a whole number');
  });
  it('a chain that is not known or not said', () => {
    expect(problem({ chain: '425' }, 'chain')).toContain('428');
    expect(problem({ chain: null }, 'chain')).toContain('219');
  });
  it('half of a reading, of the slots and of the pull', () => {
    expect(problem({ 'pitches measured': null }, 'pitches measured')).toContain('for wear');
    expect(problem({ 'room away': null }, 'room away')).toContain('slots');
    expect(problem({ power: '34 kW' }, 'front sprocket speed')).toContain('the pull');
    expect(problem({ 'centre distance': null }, 'centre distance')).toContain('beside the room');
    expect(problem({ 'chain mass': '1 kg' }, 'power')).toContain('a power');
  });
  it('nonsense in any field, without ever throwing', () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(chainDrive.example)), fc.anything(), (key, value) => {
        expect(['answer', 'problems']).toContain(chainDrive.ask(question({ [key]: value })).kind);
      }),
    );
  });
});

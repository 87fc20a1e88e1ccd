import { describe, expect, test } from 'vitest';
import { bad, good, HEAD, KINDS, library, only, withKinds } from '../../test/fixtures/kart-text.ts';
import { type Problem, readKart } from './index.ts';

describe('a kart file that is right', () => {
  const kart = good(HEAD);

  test('a kart is its template when nothing stands against it', () => {
    expect(kart).toMatchObject({ format: 1, name: '7', template: 'small', invented: false, rules: { year: 2026 } });
    expect(kart.dimensions.wheelbase).toMatchObject({ si: 1.045, unit: 'mm' });
    expect(kart.parts['rear wheel left']?.place).toEqual({ x: 0, y: 0.6 });
    expect(kart.parts['rear hub right']?.behind).toEqual([['rear wheel right'], ['clip']]);
  });

  test('a dimension that it leaves to the template, or repeats word for word, is told as not measured', () => {
    expect(kart.unmeasured).toContain('wheelbase');
    expect(good(`${HEAD}dimensions: { wheelbase: 1045 mm }\n`).unmeasured).toContain('wheelbase');
    expect(good(`${HEAD}dimensions: { wheelbase: 1046 mm }\n`).unmeasured ?? []).not.toContain('wheelbase');
  });

  test('every joint owes one check, which has the id of the joint', () => {
    for (const joint of Object.values(kart.joints))
      expect(kart.items[joint.item]).toMatchObject({
        id: joint.id,
        joint: joint.id,
        part: joint.part,
        grade: 'safety',
      });
    expect(kart.items['rear hub left/pinch bolts']).toMatchObject({
      title: 'Pinch bolts made, second retention in place',
      action: 'torque',
      when: [{ on: 'event' }, { on: 'disturbed' }],
      minutes: 1,
      secondLook: false,
      accept: '18 N·m; locking nut; witness mark in place',
    });
    expect(kart.items['clip/pin']?.action).toBe('secure');
    expect(kart.items['rear wheel left/nuts']?.measure).toMatchObject({ min: { si: 20 }, max: { si: 25 } });
  });

  test('a name means the own part first, then the same corner, then the whole kart', () => {
    expect(kart.parts['rear hub left']?.disturbs).toEqual(['frame/width']);
    expect(kart.items['rear hub left/film']?.needsOff).toEqual([['rear hub left'], ['rear wheel left']]);
    expect(kart.items['rear hub right/film']?.needsOff).toEqual([['rear hub right'], ['rear wheel right']]);
  });

  test('a setting opens the joints that say so', () => {
    expect(kart.items['frame/width']?.opens).toEqual(['rear hub left/pinch bolts', 'rear hub right/pinch bolts']);
  });

  test('amounts of use and events are read as lapses', () => {
    expect(kart.items['rear hub left/film']?.when).toEqual([
      { on: 'hours', limit: 10 },
      { on: 'laps', limit: 200 },
      { on: 'days', limit: 365 },
      { on: 'wet' },
    ]);
  });

  test('refitting is as taking off where the kind says nothing else', () => {
    expect(kart.parts['rear wheel left']?.refit).toEqual(kart.parts['rear wheel left']?.takeOff);
    expect(kart.parts['rear hub left']?.refit).toMatchObject({ minutes: 4, caution: 'Fingers clear.' });
  });

  test('functions keep their groups', () => {
    expect(kart.functions['keep wheels']?.needs).toEqual({
      allOf: [
        { part: 'rear hub left' },
        { part: 'rear hub right' },
        { kOf: 1, of: [{ part: 'clip' }, { part: 'frame' }] },
      ],
    });
  });

  test('the kart survives JSON unchanged', () => {
    expect(JSON.parse(JSON.stringify(kart))).toEqual(kart);
  });
});

describe('laying a kart file over its template', () => {
  test('fields are merged one by one, and lists are replaced', () => {
    const kart = good(
      `${HEAD}parts:\n  rear hub left:\n    joints: { pinch bolts: { second: none } }\n    items: { seat: { minutes: 5, when: [fitted] } }\n`,
    );
    expect(kart.joints['rear hub left/pinch bolts']?.second).toBeUndefined();
    expect(kart.items['rear hub left/seat']).toMatchObject({
      minutes: 5,
      title: 'Seat clean',
      when: [{ on: 'fitted' }],
    });
    expect(kart.items['rear hub right/seat']?.minutes).toBe(2);
  });

  test("a torque of the owner's own does not borrow the source of the one it replaces", () => {
    const own = (joint: string) =>
      good(`${HEAD}parts: { rear hub left: { joints: { pinch bolts: { ${joint} } } } }`).joints[
        'rear hub left/pinch bolts'
      ];
    expect(own('torque: 20 N·m')?.torque).toMatchObject({ min: { si: 20 }, source: 'the kart file, no source given' });
    expect(own('torque: 20 N·m, source: manual page 3')?.torque?.source).toBe('manual page 3');
  });

  test('a part taken away takes its joints, its items and every mention with it', () => {
    const kart = good(`${HEAD}parts: { rear wheel left: none, rear wheel right: none }`);
    expect(kart.parts['rear hub left']?.behind).toEqual([]);
    expect(Object.keys(kart.items).some(id => id.startsWith('rear wheel left/'))).toBe(false);
    expect(kart.items['rear hub left/film']?.needsOff).toEqual([]);
  });

  test('an item or a joint taken away is gone', () => {
    const kart = good(`${HEAD}parts: { rear hub left: { items: { seat: none }, joints: { pinch bolts: none } } }`);
    expect(kart.items['rear hub left/seat']).toBeUndefined();
    expect(kart.parts['rear hub left']?.joints).toEqual([]);
  });

  test('another way in replaces the way of the template', () => {
    const kart = good(`${HEAD}parts: { rear hub right: { behind: [clip] } }`);
    expect(kart.parts['rear hub right']?.behind).toEqual([['clip']]);
  });

  test('a function that loses every part is told as a note', () => {
    const read = readKart(`${HEAD}parts: { clip: none }\nfunctions: { stop: { severity: 1, needs: clip } }`, library);
    expect(read).toMatchObject({ ok: true, notes: [{ severity: 'note', path: 'functions > stop' }] });
  });

  test('a dimension outside the limit of its rules is told as a note', () => {
    const read = readKart(`${HEAD}dimensions: { overall rear width: 1410 mm }`, library);
    expect(read).toMatchObject({ ok: true, notes: [{ line: 4, got: '1410 mm' }] });
  });
});

describe('what is wrong is told with place and remedy', () => {
  const cases: [string, string, Partial<Problem>, RegExp][] = [
    ['an unknown key', 'dimensoins: { wheelbase: 1 m }', { line: 4, column: 1, path: 'dimensoins' }, /"dimensions"/],
    ['an unknown key of a part', 'parts:\n  clip:\n    bheind: [frame]', { line: 6, column: 5 }, /"behind"/],
    [
      'a bare number',
      'dimensions: { wheelbase: 1045 }',
      { line: 4, column: 15, got: 'the bare number 1045' },
      /"1045 mm"/,
    ],
    ['a dimension without a unit', 'dimensions: { wheelbase: "1045" }', { path: 'dimensions > wheelbase' }, /unit/],
    ['a wrong unit', 'dimensions: { wheelbase: 1045 kg }', { path: 'dimensions > wheelbase' }, /mass/],
    ['a word where a number with unit belongs', 'dimensions: { wheelbase: long }', { got: '"long"' }, /number/],
    ['NaN', 'dimensions: { wheelbase: .nan }', { path: 'dimensions > wheelbase' }, /unit|mm/],
    ['an unknown rule set', 'rules: medow-2026', { line: 4, path: 'rules' }, /"meadow-2026"/],
    ['an unknown kind', 'parts: { clip: { kind: klip } }', { path: 'parts > clip > kind' }, /"clip"/],
    [
      'a new part without kind',
      'parts: { rear hub lft: { maker: X } }',
      { path: 'parts > rear hub lft > kind' },
      /"rear hub left"/,
    ],
    ['a new part without system', 'parts: { rope: { kind: clip } }', { path: 'parts > rope > system' }, /system/],
    ['an unknown system', 'parts: { clip: { system: brake } }', { path: 'parts > clip > system' }, /"brakes"/],
    [
      'a missing part in the way',
      'parts: { clip: { behind: [rear wheel lft] } }',
      { path: 'parts > clip > behind > 0' },
      /"rear wheel left"/,
    ],
    ['a missing item', 'parts: { clip: { disturbs: [widht] } }', { path: 'parts > clip > disturbs > 0' }, /"width"/],
    ['a missing item of a part', 'parts: { clip: { disturbs: [frame/widht] } }', {}, /"width"/],
    [
      'a missing joint',
      'parts: { frame: { items: { width: { opens: [rear hub left/pinch bolt] } } } }',
      {},
      /"pinch bolts"/,
    ],
    ['a mate that is not there', 'parts: { frame: { items: { width: { needs off: [[mate whel]] } } } }', {}, /"wheel"/],
    ['a part to take away that is not there', 'parts: { clp: none }', { path: 'parts > clp' }, /"clip"/],
    ['an item to take away that is not there', 'parts: { clip: { items: { seat: none } } }', {}, /take the line out/],
    [
      'a missing part of a function',
      'functions: { stop: { severity: 1, needs: { any of: [clap, frame] } } }',
      {},
      /"clip"/,
    ],
    [
      'more needed than named',
      'functions: { stop: { severity: 1, needs: { 3 of: [clip, frame] } } }',
      {},
      /lower the number/,
    ],
    [
      'two groups in one',
      'functions: { stop: { severity: 1, needs: { all of: [clip], any of: [frame] } } }',
      {},
      /one group/,
    ],
    ['an unknown lapse', 'parts: { frame: { items: { width: { when: [10 hours] } } } }', { got: '"10 hours"' }, /10 h/],
    ['a lapse of nothing', 'parts: { frame: { items: { width: { when: [0 h] } } } }', {}, /10 h/],
    [
      'an item without its fields',
      'parts: { clip: { items: { look: { title: x, action: look, how: x, accept: x, source: x, grade: safety, when: [wet] } } } }',
      { path: 'parts > clip > items > look > minutes' },
      /minutes/,
    ],
    [
      'an item named as a joint',
      'parts: { clip: { items: { pin: { title: x, action: look, how: x, accept: x, source: x, grade: safety, when: [wet], minutes: 1 } } } }',
      {},
      /rename/,
    ],
    [
      'a torque without source',
      'parts: { clip: { joints: { pin: { torque: 5 N·m } } } }',
      { path: 'parts > clip > joints > pin > torque' },
      /source/,
    ],
    [
      'a torque in millimetres',
      'parts: { rear hub left: { joints: { pinch bolts: { torque: 5 mm } } } }',
      {},
      /length/,
    ],
    [
      'a range upside down',
      'parts: { rear hub left: { joints: { pinch bolts: { torque: 22..18 N·m } } } }',
      {},
      /exchange/,
    ],
    [
      'a target outside its limits',
      'parts: { frame: { items: { width: { measure: { target: 1500 mm } } } } }',
      {},
      /correct/,
    ],
    ['an unknown unit', 'parts: { frame: { items: { width: { measure: { unit: mn } } } } }', {}, /"mm"/],
    [
      'a reading of another kind than its dimension',
      'parts: { frame: { items: { weights: { measure: { dimension: wheelbase } } } } }',
      { path: 'parts > frame > items > weights > measure > dimension' },
      /length/,
    ],
    [
      'a circle in the ways in',
      'parts: { rear wheel left: { behind: [rear hub left] } }',
      { got: 'a circle: rear wheel left, which is behind rear hub left, which is behind rear wheel left' },
      /behind one of/,
    ],
    [
      'a part behind the frame',
      'parts: { clip: { behind: [frame] } }',
      { got: 'clip behind frame, which is never taken off' },
      /another way/,
    ],
    [
      'an item that needs the frame off',
      'parts: { rear hub left: { items: { seat: { needs off: [[frame]] } } } }',
      {},
      /removable/,
    ],
    [
      'settings that disturb each other',
      'parts: { frame: { items: { weights: { disturbs: [width] } } } }',
      { got: 'a circle: frame/width disturbs frame/weights disturbs frame/width' },
      /order/,
    ],
    [
      'an item undone by the part it needs off',
      'parts: { rear wheel left: { disturbs: [rear hub left/seat] } }',
      { got: 'rear hub left/seat disturbed by rear wheel left, which must be off to do it' },
      /disturbs/,
    ],
    [
      'a check that opens a joint',
      'parts: { clip: { joints: { pin: { opened by: [rear wheel left/nuts] } } } }',
      {},
      /loosens/,
    ],
    ['a number for a text', 'parts: { clip: { maker: 12 } }', { got: 'the bare number 12' }, /"12"/],
    ['a list for a map', 'parts: [clip]', { got: 'a list', path: 'parts' }, /map/],
    ['nothing for a list', 'parts: { clip: { carries: } }', { got: 'nothing' }, /list/],
    ['a part with a slash', 'parts: { a/b: { kind: clip } }', { path: 'parts > a/b' }, /without "\/"/],
    [
      'a name that JavaScript keeps for itself',
      'parts: { constructor: none }',
      { got: '"constructor"' },
      /another name/,
    ],
    ['an alias', 'dimensions: { a: &x 1 mm, b: *x }', { got: 'the alias *x' }, /write the value out/],
    ['the same key twice', 'rules: meadow-2026\nrules: meadow-2026', { line: 5 }, /keep one/],
  ];
  test.each(cases)('%s', (_, text, expected, remedy) => {
    const problem = only(HEAD + text);
    expect(problem).toMatchObject({ severity: 'error', ...expected });
    expect(problem.remedy).toMatch(remedy);
    expect(problem.message).toContain(`line ${problem.line}, column ${problem.column}`);
    expect(problem.file).toBeUndefined();
  });

  test('an unknown template suggests the nearest, and nothing else is said', () => {
    expect(only('kart: 1\nname: x\ntemplate: smal\n')).toMatchObject({
      line: 3,
      remedy: expect.stringContaining('"small"'),
    });
  });

  test('a second document in the file is refused, not passed over', () => {
    expect(only(`${HEAD}---\nkart: 1\n`)).toMatchObject({ remedy: expect.stringContaining('one kart a file') });
  });

  test('a kart without a part is refused: nothing could ever stand against it', () => {
    expect(only('kart: 1\nname: x\n')).toMatchObject({ remedy: expect.stringContaining('template') });
  });

  test('a newer format is refused', () => {
    expect(bad(HEAD.replace('kart: 1', 'kart: 2'))[0]).toMatchObject({ path: 'kart', got: 'the bare number 2' });
  });

  test('all errors come at once, in the order of the lines', () => {
    const problems = bad(
      `${HEAD}dimensions: { wheelbase: 1045 }\nparts:\n  clip: { kind: klip }\n  rope: { knd: clip }\nrules: none of these\n`,
    );
    expect(problems.map(p => p.line)).toEqual([4, 6, 7, 7, 8]);
  });

  test('an error of the library names its file', () => {
    const [problem] = bad(HEAD, withKinds(KINDS.replace('grade: performance', 'grade: perfomance')));
    expect(problem).toMatchObject({ file: 'kinds/a.yaml', got: '"perfomance"' });
    expect(problem?.remedy).toContain('"performance"');
  });

  test('an error of the library is told again when it is read again', () => {
    const broken = withKinds(KINDS.replace('measure: { unit: kg, min: 30 kg }', 'measure: { min: 30 kg }'));
    expect(bad(HEAD, broken)).toEqual(bad(HEAD, broken));
    expect(bad(HEAD, broken)).toHaveLength(1);
  });

  test('a rule file that is broken does not stand in the way of a kart that does not name it', () => {
    expect(good(HEAD, { ...library, rules: { ...library.rules, 'b.yaml': 'id: other\nbody: 3\n' } }).name).toBe('7');
  });

  test('a kind that stands in two files is told', () => {
    const twice = { ...library, kinds: { 'a.yaml': KINDS, 'b.yaml': 'clip: { take off: { minutes: 1 } }' } };
    expect(only(HEAD, twice)).toMatchObject({ file: 'kinds/b.yaml', got: 'a second "clip"' });
  });
});

describe('reach with alternatives', () => {
  test('a circle through one way is no circle while another way is open', () => {
    // The hub on the right can come off by the wheel, so the clip may stand behind it, although the other way needs the clip.
    const problems = bad(`${HEAD}parts: { clip: { behind: [rear hub right] } }`);
    expect(problems.filter(p => p.got.startsWith('a circle: '))).toEqual([]);
  });

  test('a circle through every way is one', () => {
    const problems = bad(
      `${HEAD}parts: { clip: { behind: [rear hub right] }, rear wheel right: { behind: [rear hub right] } }`,
    );
    expect(problems.map(p => p.got).join()).toContain('a circle: ');
  });

  test('a way in that would undo the item is left out while another remains', () => {
    const kart = good(
      `${HEAD}parts: { rear wheel left: { disturbs: [rear hub left/film] }, rear hub left: { behind: [clip] } }`,
    );
    expect(kart.items['rear hub left/film']?.needsOff).toEqual([['rear hub left']]);
  });
});

test('ways in and disturbances that leave no order are named as a loop', () => {
  // The clip goes back before the wheel; the wheel disturbs the seat of the hub; setting that opens the clip's pin.
  const text = `${HEAD}parts:
  clip: { behind: [rear wheel left] }
  rear wheel left: { disturbs: [frame/gap] }
  frame: { items: { gap: { title: Gap, action: set, how: gauge, accept: as set, source: memory, grade: safety, when: [disturbed], minutes: 1, opens: [clip/pin] } } }
`;
  const problem = only(text);
  expect(problem.got).toMatch(/^a loop: ".*" comes before ".*"/);
  for (const step of ['refit rear wheel left', 'do frame/gap', 'do clip/pin'])
    expect(problem.got).toContain(`"${step}"`);
  expect(problem.line).toBeGreaterThanOrEqual(5);
});

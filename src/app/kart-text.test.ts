import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { libraryFiles } from '../host/index.ts';
import { newKartFile, readKart } from '../kart/index.ts';
import { edited, type KartEdit } from './kart-text.ts';

const library = libraryFiles();
const FILE = `# Mine, since 2019
kart: 1
name: "7" # as on the nose
template: six-speed gearbox

dimensions:
  # with the long tape
  wheelbase: 1045 mm  # measure yours
  overall rear width: 1390 mm # at hub height

# Parts
parts:
  front fairing: none # cracked, at home
  tie rod left:
    # Left-hand thread outside
    maker: invented works
lives:
  chain: { half gone by: 25 h, source: own notes }
`;
const COMMENTS = FILE.match(/#.*/g)?.map(one => one.trim()) ?? [];
const kartOf = (text: string) => {
  const read = readKart(text, library);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.kart;
};
const commentsIn = (text: string) => text.match(/#.*/g)?.map(one => one.trim()) ?? [];
/** Each with the block it stands in: a part may be named again elsewhere. */
const keysIn = (text: string): readonly string[] =>
  text
    .split(/^(?=\w)/m)
    .flatMap(block => (block.match(/^\s*[\w ]+(?=:)/gm) ?? []).map(key => `${/^\w+/.exec(block)}/${key}`));

describe('one thing changed in a kart file', () => {
  test('a part out is written as taken away, and in again leaves the file as the template has it', () => {
    const out = edited(FILE, { is: 'part out', part: 'radiator', below: true });
    expect(out).toContain('  radiator: none\n');
    expect(kartOf(out).parts).not.toHaveProperty('radiator');
    expect(edited(out, { is: 'part in', part: 'radiator' })).toBe(edited(FILE, { is: 'part in', part: 'nothing' }));
    expect(kartOf(edited(FILE, { is: 'part in', part: 'front fairing' })).parts).toHaveProperty('front fairing');
  });

  test('a part of its own is a few lines at the end, and goes without a trace', () => {
    const added = edited(FILE, {
      is: 'new part',
      part: 'second chain guard',
      kind: 'chain guard',
      system: 'driveline',
      behind: ['side box right'],
    });
    expect(kartOf(added).parts['second chain guard']).toMatchObject({
      system: 'driveline',
      behind: [['side box right']],
    });
    expect(edited(added, { is: 'part out', part: 'second chain guard', below: false })).not.toContain('second chain');
  });

  test('a second retention goes out and in, each seen by the reader', () => {
    const of = { part: 'brake push rod', joint: 'clevis pins' };
    const had = kartOf(FILE).joints['brake push rod/clevis pins']?.second;
    const out = edited(FILE, { is: 'second out', ...of });
    expect(kartOf(out).joints['brake push rod/clevis pins']).not.toHaveProperty('second');
    expect(edited(out, { is: 'second back', ...of })).toBe(edited(FILE, { is: 'second back', ...of }));
    const back = edited(out, { is: 'second in', ...of, second: 'strap', accept: 'strap in place' });
    expect(had).toBeDefined();
    expect(kartOf(back).joints['brake push rod/clevis pins']?.second).toBe('strap');
    expect(kartOf(back).items['brake push rod/clevis pins']?.accept).toBe('strap in place');
  });

  test('a dimension that is measured loses the words that asked for it, and no other', () => {
    const text = edited(FILE, { is: 'dimension', name: 'wheelbase', value: '41 1/8 in' });
    expect(text).toContain('wheelbase: 41 1/8 in\n');
    expect(kartOf(text).unmeasured).not.toContain('wheelbase');
    expect(commentsIn(text)).toEqual(COMMENTS.filter(one => one !== '# measure yours'));
  });

  test('comments, order and everything else stay, whatever is tapped', () => {
    const parts = Object.keys(kartOf(FILE).parts);
    const edit: fc.Arbitrary<KartEdit> = fc.oneof(
      fc.record({
        is: fc.constant('part out' as const),
        part: fc.constantFrom(...parts.filter(p => p !== 'tie rod left')),
        below: fc.constant(true),
      }),
      fc.record({
        is: fc.constant('second out' as const),
        part: fc.constant('brake push rod'),
        joint: fc.constant('clevis pins'),
      }),
      fc.record({
        is: fc.constant('dimension' as const),
        name: fc.constant('axle length'),
        value: fc.constant('1040 mm'),
      }),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 5 }), edits => {
        const text = edits.reduce<string>(edited, FILE);
        expect(commentsIn(text)).toEqual(COMMENTS);
        const [before, after] = [keysIn(FILE), keysIn(text)];
        expect(after.filter(key => before.includes(key))).toEqual(before);
      }),
      { numRuns: 60 },
    );
  });

  test('a new file of each template takes every edit and still reads', () => {
    for (const template of ['six-speed gearbox', 'single-speed direct-drive', 'four-stroke junior']) {
      const made = newKartFile(template, '7', library);
      if (!made.ok) throw new Error('the template must be there');
      const once = edited(made.text, { is: 'dimension', name: 'wheelbase', value: '1040 mm' });
      const text = edited(once, { is: 'part out', part: 'floor tray', below: true });
      expect(Object.keys(kartOf(text).parts)).not.toContain('floor tray');
      expect(commentsIn(text).length).toBe(commentsIn(made.text).length - 1);
      expect(edited(text, { is: 'part in', part: 'floor tray' })).toBe(once);
    }
  });

  test('an empty `parts:`, a flow map and lines that end the other way are taken as they are', () => {
    const out: KartEdit = { is: 'part out', part: 'radiator', below: true };
    for (const parts of ['parts:\n', 'parts: {}\n', 'parts: { front fairing: none }\n', ''])
      expect(kartOf(edited(`kart: 1\nname: "7"\ntemplate: six-speed gearbox\n${parts}`, out)).parts).not.toHaveProperty(
        'radiator',
      );
    const windows = edited('kart: 1\r\nname: "7"\r\ntemplate: six-speed gearbox\r\n', out);
    expect(windows.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});

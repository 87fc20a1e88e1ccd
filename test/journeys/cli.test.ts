/** The command line as a person and a script use it: the built program, a book of its own, exit codes and all. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { type Run, runCli } from './run-cli.ts';
import { payloadOf } from './served.ts';

type More = { readonly input?: string; readonly data?: string };

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs in `folder`, on the book in `data` below it. */
const kw = (words: readonly string[], more: More = {}): Promise<Run> =>
  runCli(folder, words, { data: 'empty', ...more });

const json = async <T>(words: readonly string[], more?: More): Promise<T> =>
  JSON.parse((await kw([...words, '--json'], more)).out);

/** Does every step the plan still holds, in its order; then another person takes the second looks. */
async function workThePlan(data: string, kart: Kart): Promise<void> {
  for (let round = 0; round < 4; round++) {
    const { steps } = await json<Plan>(['plan'], { data });
    const todo = steps.filter(step => step.state !== 'done');
    if (todo.length === 0) return;
    await record(
      todo.filter(step => step.action !== 'second-look'),
      kart,
      data,
      'A. Bench',
    );
    await record(
      todo.filter(step => step.action === 'second-look'),
      kart,
      data,
      'B. Other',
    );
  }
  const left = (await json<Plan>(['plan'], { data })).steps.filter(step => step.state !== 'done');
  expect(left.map(step => `${step.key}: ${step.why}`)).toEqual([]);
}

async function record(steps: readonly Step[], kart: Kart, data: string, by: string): Promise<void> {
  if (steps.length === 0) return;
  const input = steps.map(step => JSON.stringify(payloadOf(step, kart))).join('\n');
  expect(await kw(['log', '--by', by], { data, input })).toMatchObject({ code: 0, err: '' });
}

async function kartOf(data: string): Promise<Kart> {
  const { createApp } = await import('../../src/app/index.ts');
  const { kartReader, libraryFiles, systemClock, randomIds } = await import('../../src/host/index.ts');
  const { memoryStore } = await import('../../src/store/memory/index.ts');
  const reader = kartReader(libraryFiles());
  const app = createApp({ store: memoryStore(), clock: systemClock, ids: randomIds, reader, device: 'test' });
  await app.importBook((await kw(['book', 'export'], { data })).out);
  const [line] = await app.karts();
  return app.kart(line?.name ?? '');
}

describe('the whole loop', () => {
  test('on the demo kart: from a plan to a signed release, with no step left', async () => {
    const data = 'demo';
    const demo = (await kw(['book', 'export', '--demo'])).out;
    expect((await kw(['book', 'import'], { data, input: demo })).code).toBe(0);
    const before = await kw(['fit'], { data });
    expect(before).toMatchObject({ code: 1, err: '' });
    expect(before.out).toContain('NOT FIT');
    const defects = (await json<{ against: { what: string; facts: string[] }[] }>(['fit'], { data })).against;
    for (const defect of defects.filter(one => one.what === 'defect'))
      expect((await kw(['log', 'mended', defect.facts[0] ?? '', '--how', 'put right'], { data })).code).toBe(0);
    await workThePlan(data, await kartOf(data));
    const after = await kw(['fit'], { data });
    expect(after.out).toContain('FIT: nothing in the record stands against running');
    expect(after.code).toBe(0);
    expect(await kw(['release', '--signer', 'A. Bench'], { data })).toMatchObject({ code: 0, err: '' });
    const { facts } = await json<{ facts: { fact: { verdict: string; signer: string } }[] }>(
      ['facts', '--kind', 'released', '--last', '1'],
      { data },
    );
    expect(facts[0]?.fact).toMatchObject({ verdict: 'fit', signer: 'A. Bench' });
    expect((await kw(['book', 'verify'], { data })).code).toBe(0);
  });

  test('on a kart of its own made with `new`: nothing is known at first, and all of it at the end', async () => {
    const data = 'own';
    expect((await kw(['new', 'own.yaml', '--template', 'six-speed gearbox', '--name', '7'])).code).toBe(0);
    expect((await kw(['check', 'own.yaml'])).out).toMatch(/^Kart 7 reads: \d+ parts/);
    expect((await kw(['fit', '--kart', 'own.yaml'], { data })).code).toBe(2);
    expect((await kw(['facts'], { data })).code).toBe(3); // asking wrote nothing
    expect((await kw(['log', 'kart-filed', 'own.yaml'], { data })).out).toMatch(/^recorded /); // the file names its kart
    for (const filed of [['--kart', 'own.yaml'], []]) {
      expect((await kw(['log', 'kart-filed', 'own.yaml', ...filed], { data })).out).toMatch(/^in force as /);
      expect((await json<{ facts: unknown[] }>(['facts'], { data })).facts).toHaveLength(1); // once, however often it is asked
    }
    const event = ['log', 'event', 'Round 1', '--from', '2099-05-01 08:00', '--minutes', '60', '--kart', 'own.yaml'];
    expect(await kw(event, { data })).toMatchObject({ code: 0, err: '' });
    const plan = await json<Plan>(['plan'], { data });
    expect(plan).toMatchObject({ kart: '7', event: 'Round 1' });
    expect((await kw(['release', '--signer', 'A'], { data })).code).toBe(3);
    await workThePlan(data, await kartOf(data));
    expect(await kw(['release', '--signer', 'A. Bench'], { data })).toMatchObject({ code: 0, err: '' });
    expect((await kw(['fit'], { data })).code).toBe(0);
  });
});

test('sizes are read in the units that were chosen, by --units or KARTWRIGHT_UNITS; JSON keeps what was given', async () => {
  const plan = await kw(['plan', '--demo', '--units', 'in, ft-lb']);
  expect(plan.out).toMatch(/target +5\.612 in/);
  expect(plan.out).toMatch(/13\.3 ft·lb to 16\.2 ft·lb/);
  const sheet = await runCli(folder, ['sheet', '--demo'], { more: { KARTWRIGHT_UNITS: 'psi' } });
  expect(sheet.out).toMatch(/9 psi/);
  expect(sheet.out).not.toMatch(/\d bar/);
  const { steps } = JSON.parse((await kw(['plan', '--demo', '--json', '--units', 'in'])).out) as Plan;
  expect(steps.some(step => step.target?.text.startsWith('142.55 mm'))).toBe(true);
  expect(await kw(['plan', '--demo', '--units', 'ell'])).toMatchObject({
    code: 3,
    err: expect.stringMatching(/--units: Expected units out of .*got ell/),
  });
});

describe('what scripts read', () => {
  test('plan --json holds what its readers were promised', async () => {
    const plan = await json<Plan & { verdict: string }>(['plan', '--demo']);
    for (const key of ['kart', 'event', 'minutes', 'leftOut', 'steps', 'bound', 'whileOpen', 'verdict'])
      expect(plan).toHaveProperty(key);
    const keys =
      'n action on system item grade why minutes after target tolerance tools consumables caution secondLook state';
    for (const step of plan.steps) for (const key of keys.split(' ')) expect(step).toHaveProperty(key);
    const actions = new Set(plan.steps.map(step => step.action));
    const known =
      'take-off clean look measure torque replace set lubricate refit secure function-test second-look posture mend';
    for (const action of actions) expect(known.split(' ')).toContain(action);
  });

  test('with too short a time, what is left out is named', async () => {
    const plan = await json<Plan>(['plan', '--demo', '--minutes', '30']);
    expect(plan.window).toBe(30);
    expect(plan.leftOut.length).toBeGreaterThan(0);
  });

  test('a past moment is answered as the book stood then', async () => {
    const all = await json<{ facts: { fact: { at: string } }[] }>(['facts', '--demo']);
    const half = all.facts[Math.floor(all.facts.length / 2)]?.fact.at ?? '';
    const then = await json<{ facts: { fact: { at: string } }[] }>(['facts', '--demo', '--at', half]);
    expect(then.facts.length).toBeLessThan(all.facts.length);
    expect(then.facts.every(({ fact }) => fact.at <= half)).toBe(true);
  });

  test('calc lists its subjects, gives the schema of each, and answers its own example', async () => {
    const { subjects } = await json<{ subjects: { name: string }[] }>(['calc']);
    expect(subjects.length).toBeGreaterThan(0);
    for (const { name } of subjects) {
      const example = /--input '(.*)'/.exec((await kw(['calc', name])).err)?.[1] ?? '';
      expect(await json(['calc', name, '--input', example])).toMatchObject({ kind: 'answer' });
      expect(JSON.parse((await kw(['calc', name, '--schema'])).out)).toHaveProperty('type', 'object');
      expect((await kw(['calc', name, '--explain'])).out).toContain('SOURCES');
    }
  });

  test('the set-up sheet stands against the baseline, a session, and says what is said of one setting', async () => {
    type Sheet = {
      against: { label: string };
      differences: { name: string; by: string }[];
      hints: { source: string }[];
    };
    const base = await json<Sheet>(['sheet', '--demo']);
    expect(base.against.label).toContain('Base of the season');
    const heat = await json<Sheet>(['sheet', '--demo', '--against', 'Heat 1']);
    expect(heat.differences).toContainEqual(expect.objectContaining({ name: 'front spacers', by: '-10 mm' }));
    const about = await kw(['sheet', '--demo', '--about', 'front spacers']);
    expect(about.out).toMatch(/WHAT IS SAID OF IT[\s\S]*Source: [\s\S]*WHAT THIS KART SHOWED/);
    const wrong = await kw(['sheet', '--demo', '--against', 'Heat 9']);
    expect([wrong.code, wrong.err]).toEqual([3, expect.stringMatching(/session of the record/)]);
  });

  test('weighed, ballast added where it is told, weighed again: the shares are met and the weights were due again', async () => {
    type Scales = { figures: Record<string, { si: number }> };
    const wheels = ['front left', 'front right', 'rear left', 'rear right'];
    const weigh = (kg: readonly number[], more = {}) =>
      json<Scales>([
        'calc',
        'scales',
        '--input',
        JSON.stringify({ ...Object.fromEntries(wheels.map((wheel, n) => [wheel, `${kg[n]} kg ± 0.1 kg`])), ...more }),
      ]);
    const place = { name: 'floor', forward: '522.5 mm', left: '0 mm', most: '8 kg' };
    const stance = { wheelbase: '1045 mm', 'front track': '1080 mm', 'rear track': '1170 mm' };
    const first = await weigh([37, 37, 49, 49], { ...stance, 'least mass': '175 kg', places: [place] });
    const added = first.figures['ballast floor']?.si ?? 0;
    expect(added).toBeGreaterThan(3);
    const quarter = added / 4; // in the middle of the four contacts, so a quarter on each
    const second = await weigh([37 + quarter, 37 + quarter, 49 + quarter, 49 + quarter], { 'least mass': '175 kg' });
    expect(second.figures['margin at the flag']?.si).toBeCloseTo(added - 3, 6);
    expect(second.figures['chance of being heavy enough']?.si).toBeGreaterThan(0.949);

    const data = 'ballast';
    await kw(['new', 'ballast.yaml', '--template', 'six-speed gearbox'], { data });
    const due = async () => {
      const { due: all } = await json<{ due: { item: string; why: string }[] }>(['due'], { data });
      return all.find(({ item }) => item === 'frame/corner weights');
    };
    await kw(['log', 'checked', 'frame/corner weights', '--pass', '--value', '43 %', '--kart', 'ballast.yaml'], {
      data,
    });
    expect(await due()).toBeUndefined();
    await kw(['log', 'taken-off', 'ballast block left'], { data });
    await kw(['log', 'fitted', 'ballast block left', '--fresh'], { data });
    expect((await due())?.why).toMatch(/^Ballast block left was put back/);
  });

  test('a book exported, imported and exported again is the same to the byte', async () => {
    const once = (await kw(['book', 'export', '--demo'])).out;
    await kw(['book', 'import'], { data: 'copy', input: once });
    expect((await kw(['book', 'export'], { data: 'copy' })).out).toBe(once);
    expect((await kw(['book', 'import'], { data: 'copy', input: once })).out).toContain('Imported 0 facts');
  });

  test('every command shows an example in its help', async () => {
    const names = 'new check plan due log fit release facts strike sheet calc serve'.split(' ').map(name => [name]);
    for (const words of [...names, ['book', 'export'], ['book', 'import'], ['book', 'verify'], ['log', 'ran']]) {
      const help = await kw([...words, '--help']);
      expect(help.code).toBe(0);
      expect(help.out).toContain('Example');
    }
  });
});

describe('bad input: exit code 3, one line a problem, and nothing written', () => {
  const cases: readonly (readonly [string, readonly string[], RegExp, string?])[] = [
    ['a part that does not exist', ['log', 'taken-off', 'rear weel left'], /Did you mean "rear wheel left"/],
    ['a fit of a part that is on', ['log', 'fitted', 'axle'], /axle is on the kart/],
    ['a date in the future', ['log', 'note', 'x', '--at', '2099-01-01'], /not after/],
    ['a date that is none', ['log', 'note', 'x', '--at', '2026-02-30'], /date and time/],
    ['a bare number', ['log', 'checked', 'axle/straight', '--pass', '--value', '0.1'], /Add the unit/],
    ['a wrong unit', ['log', 'checked', 'axle/straight', '--pass', '--value', '0.1 bar'], /length/],
    ['not a number', ['log', 'checked', 'axle/straight', '--pass', '--value', 'NaN mm'], /Begin with a number/],
    ['minutes that are not a number', ['log', 'ran', '--minutes', 'NaN'], /Expected a number/],
    ['a value far outside', ['log', 'set', 'axle/straight', '--value', '999 mm'], /--sure/],
    ['a pass that is none', ['log', 'checked', 'axle/straight', '--pass', '--value', '0.9 mm'], /at most 0.5 mm/],
    ['a fail without its reason', ['log', 'checked', 'axle/straight', '--fail'], /what is wrong/],
    ['two results at once', ['log', 'checked', 'axle/straight', '--pass', '--fail'], /one of the two/],
    ['a strike of nothing', ['strike', 'nope', '--why', 'x'], /id of a fact/],
    ['a release without a signer', ['release'], /--signer/],
    ['JSON that is none', ['log'], /standard input, line 1/, '{"kind":'],
    ['a fact with a key too many', ['log'], /got also colour/, '{"kind":"note","text":"x","colour":"red"}'],
    ['an unknown kind of fact', ['log'], /Kinds: kart filed/, '{"kind":"wash"}'],
    ['a kart that is not there', ['plan', '--kart', '99'], /Karts in this book: 41/],
    ['a kart file that is not there', ['plan', '--kart', 'none.yaml'], /there is none at none.yaml/],
    ['an event that is not there', ['plan', '--event', 'Nowhere'], /Events: /],
    ['an option that does not exist', ['plan', '--minuts', '3'], /--minutes/],
    ['a window of no time', ['plan', '--minutes', '0'], /above 0/],
  ];
  for (const [name, words, remedy, input] of cases) {
    test(name, async () => {
      const demo = words[0] === 'release' ? [] : ['--demo'];
      const done = await kw([...words, ...demo], input === undefined ? {} : { input });
      expect(done.err).toMatch(remedy);
      expect(done).toMatchObject({ code: 3, out: '' });
      expect(done.err).not.toMatch(/\n\s+at /); // a trace is not an answer
    });
  }

  test('hours that run backwards', async () => {
    const data = 'hours';
    await kw(['new', 'hours.yaml', '--template', 'six-speed gearbox']);
    const ran = (hours: string) => ['log', 'ran', '--minutes', '10', '--meter-hours', hours, '--kart', 'hours.yaml'];
    expect((await kw(ran('5'), { data })).code).toBe(0);
    expect(await kw(ran('4'), { data })).toMatchObject({ code: 3, err: expect.stringContaining('at least 5 h') });
  });

  test('a kart file with several faults names them all, each with its line', async () => {
    writeFileSync(
      join(folder, 'bad.yaml'),
      'kart: 1\nname: x\ntemplate: six-sped gearbox\ndimensions: { wheelbase: 1045 }\n',
    );
    const done = await kw(['check', 'bad.yaml']);
    expect(done.code).toBe(3);
    expect(done.err).toMatch(/bad\.yaml:3:\d+.*six-speed gearbox/);
    expect(done.err).toMatch(/bad\.yaml:4:\d+/);
  });

  test('broken YAML, and a template that is not there', async () => {
    writeFileSync(join(folder, 'broken.yaml'), 'kart: 1\nname: [x\n');
    expect(await kw(['check', 'broken.yaml'])).toMatchObject({ code: 3, err: expect.stringContaining('broken.yaml:') });
    const done = await kw(['new', 'n.yaml', '--template', 'six-sped gearbox']);
    expect(done).toMatchObject({ code: 3, err: expect.stringContaining('six-speed gearbox') });
  });

  test('a file that is there is not overwritten', async () => {
    writeFileSync(join(folder, 'mine.yaml'), 'mine');
    expect((await kw(['new', 'mine.yaml', '--template', 'six-speed gearbox'])).code).toBe(3);
    expect(readFileSync(join(folder, 'mine.yaml'), 'utf8')).toBe('mine');
  });

  test('a torn export is refused whole', async () => {
    const torn = (await kw(['book', 'export', '--demo'])).out.slice(0, -30);
    const done = await kw(['book', 'import'], { data: 'torn', input: torn });
    expect(done).toMatchObject({ code: 3, err: expect.stringContaining('nothing was imported') });
    expect((await kw(['book', 'verify'], { data: 'torn' })).out).toMatch(/^0 facts/);
  });

  test('two processes write into one book at once, and nothing is lost', async () => {
    const data = 'two';
    await kw(['new', 'two.yaml', '--template', 'six-speed gearbox']);
    await kw(['log', 'note', 'first', '--kart', 'two.yaml'], { data });
    const notes = await Promise.all([1, 2, 3, 4].map(n => kw(['log', 'note', `note ${n}`], { data })));
    expect(notes.map(done => done.code)).toEqual([0, 0, 0, 0]);
    expect((await kw(['book', 'verify'], { data })).out).toMatch(/^6 facts/);
  });

  test('with --json a problem is JSON too', async () => {
    const done = await kw(['log', 'fitted', 'axle', '--demo', '--json']);
    expect(done.code).toBe(3);
    expect(JSON.parse(done.out)).toMatchObject({ problems: [{ code: 'already on', where: 'fact.part' }] });
  });
});

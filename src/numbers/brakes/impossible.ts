/** What no brake can be, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import type { Circuit, Input, WearInput } from './input.ts';

type Report = (problem: InputProblem | undefined) => void;

export function impossible(input: Input): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const report: Report = problem => {
    if (problem && !found.some(each => each.path === problem.path)) found.push(problem);
  };
  const { front, rear, 'bar offset': offset, 'engine drag': drag, 'reaction time': reaction, ...rest } = input;
  const { 'speed after': after, 'rotating share': rotating, ...above } = rest;
  positive(above, '', report);
  const orNothing = {
    'engine drag': drag,
    'reaction time': reaction,
    'speed after': after,
    'rotating share': rotating,
  };
  for (const [path, measure] of Object.entries(orNothing))
    report(mustBe(path, measure, '0 or more', si => si >= 0, 'write it without a sign'));
  pedal(input, report);
  bar(input, report);
  for (const path of ['efficiency', 'front load share'] as const)
    report(mustBe(path, input[path], 'above 0 and at most 100 %', si => si <= 1, 'write it in per cent'));
  const least = (input['pad friction'].half ?? 0) < input['pad friction'].si;
  report(
    mustBe(
      'pad friction',
      input['pad friction'],
      'a friction from above 0 to 1',
      si => least && si <= 1,
      'write it as "0.40 ± 0.05"',
    ),
  );
  report(mustBe('tyre grip', input['tyre grip'], 'at most 3', si => si <= 3, 'write force over load, such as "1.2"'));
  report(
    mustBe(
      'centre height',
      input['centre height'],
      `less than the wheelbase, ${input.wheelbase.text}`,
      si => si < input.wheelbase.si,
      'exchange the two, or correct one',
    ),
  );
  if (after)
    report(
      input.speed
        ? mustBe(
            'speed after',
            after,
            `less than speed, ${input.speed.text}`,
            si => si < (input.speed?.si ?? 0),
            'exchange the two speeds',
          )
        : missing('speed', 'the speed before beside the one after', '100 km/h'),
    );
  if (reaction && !input.speed) report(missing('speed', 'a speed for the reaction time', '100 km/h'));
  for (const [end, circuit] of [
    ['front', front],
    ['rear', rear],
  ] as const)
    if (circuit) circuitProblems(end, circuit, report);
  return found;
}

const missing = (path: string, expected: string, example: string): InputProblem => ({
  path,
  expected,
  got: 'nothing',
  remedy: `add it, for example "${example}"`,
});

const positive = (measures: Readonly<Record<string, Measure | undefined>>, at: string, report: Report): void => {
  for (const [name, measure] of Object.entries(measures))
    report(mustBe(`${at}${name}`, measure, 'above 0', si => si > 0, 'write it without a sign, and not 0'));
};

function pedal(input: Input, report: Report): void {
  const [ratio, pad, rod] = [input['pedal ratio'], input['pad to pivot'], input['rod to pivot']];
  if (ratio && (pad || rod))
    report({
      path: 'pedal ratio',
      expected: 'either this or both lengths of the pedal',
      got: 'both',
      remedy: 'take one of them out',
    });
  if (ratio)
    report(
      mustBe('pedal ratio', ratio, 'at least 1', si => si >= 1, 'write push-rod force over pedal force, such as "4.2"'),
    );
  else if (!pad && !rod) report(missing('pedal ratio', 'the ratio of the pedal, or both of its lengths', '4.2'));
  else if (!pad) report(missing('pad to pivot', 'both lengths of the pedal', '210 mm'));
  else if (!rod) report(missing('rod to pivot', 'both lengths of the pedal', '50 mm'));
  else
    report(
      mustBe('rod to pivot', rod, `at most pad to pivot, ${pad.text}`, si => si <= pad.si, 'exchange the two lengths'),
    );
}

function bar(input: Input, report: Report): void {
  const [spacing, offset] = [input['bar spacing'], input['bar offset']];
  if (input.front === undefined) {
    if (spacing || offset)
      report({
        path: spacing ? 'bar spacing' : 'bar offset',
        expected: 'a front circuit beside a balance bar',
        got: 'none',
        remedy: 'add "front", or take the bar out',
      });
    return;
  }
  if (!spacing) report(missing('bar spacing', 'the distance between the clevises', '60 mm'));
  if (!offset) report(missing('bar offset', 'where the bearing stands on the bar', '0 mm'));
  if (spacing && offset)
    report(
      mustBe(
        'bar offset',
        offset,
        `less than half of bar spacing, ${spacing.text}, to either side`,
        si => Math.abs(si) < spacing.si / 2,
        'measure from the middle of the bar; exchange the two if they are swapped',
      ),
    );
}

function circuitProblems(end: string, circuit: Circuit, report: Report): void {
  const { pad, disc, ...sizes } = circuit;
  positive(sizes, `${end}/`, report);
  for (const [path, most] of [
    ['pistons a side', 6],
    ['calipers', 4],
  ] as const)
    report(
      mustBe(
        `${end}/${path}`,
        circuit[path],
        `a whole number from 1 to ${most}`,
        si => Number.isInteger(si) && si <= most,
        'count them',
      ),
    );
  const [radius, diameter, height] = [circuit['effective radius'], circuit['disc diameter'], circuit['pad height']];
  const at = `${end}/effective radius`;
  if (radius && (diameter || height))
    report({
      path: at,
      expected: 'either this or disc diameter and pad height',
      got: 'both',
      remedy: 'take one of them out',
    });
  else if (!radius && !diameter && !height)
    report(missing(at, 'the effective radius, or disc diameter and pad height', '55 mm'));
  else if (!radius && !diameter)
    report(missing(`${end}/disc diameter`, 'disc diameter and pad height together', '150 mm'));
  else if (!radius && !height) report(missing(`${end}/pad height`, 'disc diameter and pad height together', '40 mm'));
  const tyre = circuit['tyre diameter'];
  const inside = (path: 'effective radius' | 'piston diameter' | 'disc diameter', limit: number): void =>
    report(
      mustBe(
        `${end}/${path}`,
        circuit[path],
        `less than ${limit === 1 ? 'the tyre diameter' : 'half of the tyre diameter'}, ${tyre.text}`,
        si => si < tyre.si * limit,
        'radius and diameter may be confused, or two sizes exchanged: correct the one that is wrong',
      ),
    );
  inside('disc diameter', 1);
  inside('effective radius', 0.5);
  inside('piston diameter', 0.5);
  if (diameter && height)
    report(
      mustBe(
        `${end}/pad height`,
        height,
        `less than half of disc diameter, ${diameter.text}`,
        si => si < diameter.si / 2,
        'exchange the two, or correct one',
      ),
    );
  for (const [name, wear] of [
    ['pad', pad],
    ['disc', disc],
  ] as const)
    if (wear) wearProblems(`${end}/${name}`, wear, report);
}

function wearProblems(at: string, wear: WearInput, report: Report): void {
  const { now, ...rest } = wear;
  positive(rest, `${at}/`, report);
  report(mustBe(`${at}/now`, now, '0 or more', si => si >= 0, 'write it without a sign'));
  if (at.endsWith('disc') && !wear.limit) report(missing(`${at}/limit`, "the disc maker's least thickness", '4 mm'));
  if (wear.new)
    report(
      mustBe(
        `${at}/now`,
        now,
        `at most new, ${wear.new.text}`,
        si => si <= (wear.new?.si ?? 0),
        'exchange now and new',
      ),
    );
  if (wear.new && wear.limit)
    report(
      mustBe(
        `${at}/limit`,
        wear.limit,
        `less than new, ${wear.new.text}`,
        si => si < (wear.new?.si ?? 0),
        'exchange limit and new',
      ),
    );
  if (wear['hours run'] && !wear.new)
    report(missing(`${at}/new`, 'the thickness when new beside the hours run', '6 mm'));
  if (wear.new && !wear['hours run'])
    report(missing(`${at}/hours run`, 'the hours run beside the thickness when new', '6 h'));
}

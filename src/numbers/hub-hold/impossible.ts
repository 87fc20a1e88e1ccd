/** What no hub can be, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import type { Input } from './input.ts';

export function impossible(input: Input): readonly InputProblem[] {
  const { contact: _, ...measures } = input;
  const found: InputProblem[] = [];
  const say = (problem: InputProblem | undefined): void => {
    if (problem && !found.some(each => each.path === problem.path)) found.push(problem);
  };
  for (const [path, measure] of Object.entries(measures) as [keyof typeof measures, Measure | undefined][]) {
    if (path === 'tyre offset') continue; // either side of the seat
    const orNothing = path === 'running torque' || path === 'scatter' || path === 'interference';
    say(
      mustBe(
        path,
        measure,
        orNothing ? '0 or more' : 'above 0',
        si => (orNothing ? si >= 0 : si > 0),
        'write it without a sign',
      ),
    );
  }
  const less = (path: keyof typeof measures, than: keyof typeof measures, half = 1): void => {
    const limit = measures[than];
    say(
      limit &&
        mustBe(
          path,
          measures[path],
          `less than ${half === 1 ? '' : 'half of '}${than}, ${limit.text}`,
          si => si < limit.si * half,
          `exchange ${path} and ${than}, or correct one; both are written with their unit`,
        ),
    );
  };
  less('bolt diameter', 'axle diameter');
  less('key width', 'axle diameter');
  less('axle wall', 'axle diameter', 0.5);
  less('axle diameter', 'hub outside diameter');
  less('running torque', 'bolt torque');
  say(
    mustBe(
      'friction clean',
      input['friction clean'],
      'at most 1',
      si => si <= 1,
      'write friction as a number such as "0.20"',
    ),
  );
  say(
    mustBe(
      'nut factor',
      input['nut factor'],
      'below 1, usually 0.10 to 0.35',
      si => si < 1,
      'write for example "0.20"',
    ),
  );
  const clean = input['friction clean']?.si ?? 0.2;
  say(
    mustBe(
      'friction film',
      input['friction film'],
      `at most the friction clean, ${clean}`,
      si => si <= clean,
      'exchange the two, or correct one: a film never holds more',
    ),
  );
  for (const path of ['rear share', 'scatter', 'driveline efficiency'] as const)
    say(
      mustBe(
        path,
        input[path],
        path === 'scatter' ? 'below 100 %' : 'at most 100 %',
        si => (path === 'scatter' ? si < 1 : si <= 1),
        'write it in per cent',
      ),
    );
  say(
    mustBe(
      'bolts',
      input.bolts,
      'a whole number from 1 to 12',
      si => Number.isInteger(si) && si <= 12,
      'count the bolts across the slot',
    ),
  );
  const [outer, inner] = [input['outer wheel load'], input['inner wheel load']];
  if (outer && inner && inner.si > outer.si)
    say({
      path: 'inner wheel load',
      expected: `at most the outer wheel load, ${outer.text}`,
      got: inner.text,
      remedy: 'exchange the two: in a corner the outer tyre carries more',
    });
  for (const missing of missingOf(input)) say(missing);
  return found;
}

/** What goes only together, or only one in place of the other. */
function missingOf(input: Input): readonly InputProblem[] {
  const given = (path: keyof Input): boolean => input[path] !== undefined;
  const add = (path: keyof Input, because: string, example: string): InputProblem => ({
    path,
    expected: because,
    got: 'nothing',
    remedy: `add it, for example "${example}"`,
  });
  const one = (path: keyof Input, other: string): InputProblem => ({
    path,
    expected: `either this or ${other}`,
    got: 'both',
    remedy: 'take one of them out',
  });
  const found: InputProblem[] = [];
  if (!given('preload') && !given('bolt torque'))
    found.push(add('bolt torque', 'the torque or the preload of the bolts', '18 N·m'));
  if (given('preload') && given('bolt torque')) found.push(one('preload', 'bolt torque'));
  if (given('bolt torque') && !given('bolt diameter'))
    found.push(add('bolt diameter', 'the thread that the torque is for', '8 mm'));
  const loads = (['outer wheel load', 'inner wheel load'] as const).filter(given);
  if (loads.length === 1)
    found.push(
      add(loads[0] === 'outer wheel load' ? 'inner wheel load' : 'outer wheel load', 'both wheel loads', '490 N'),
    );
  if (loads.length > 0 && given('mass')) found.push(one('mass', 'both wheel loads'));
  if (loads.length === 0 && !given('mass'))
    found.push(add('mass', 'the mass with driver, or both wheel loads', '175 kg'));
  if (given('engine torque') !== given('overall ratio'))
    found.push(
      add(
        given('engine torque') ? 'overall ratio' : 'engine torque',
        'engine torque and overall ratio together',
        given('engine torque') ? '14:1' : '24.5 N·m',
      ),
    );
  const keys = ['key width', 'key height', 'key length'] as const;
  if (keys.some(given))
    for (const path of keys) if (!given(path)) found.push(add(path, 'all three sizes of the key', '8 mm'));
  if (given('bolt to hinge') !== given('axle to hinge'))
    found.push(add(given('bolt to hinge') ? 'axle to hinge' : 'bolt to hinge', 'both arms of the hinge', '31 mm'));
  if (given('interference'))
    for (const path of ['hub outside diameter', 'hub length', 'axle wall'] as const)
      if (!given(path))
        found.push(add(path, 'the sizes of both rings for an interference', path === 'axle wall' ? '2 mm' : '70 mm'));
  return found;
}

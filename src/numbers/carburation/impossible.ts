/** What no carburettor can be asked, each with what would be right. */
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import { airTold } from './air-asked.ts';
import type { Input } from './input.ts';
import { mustGive, wrong } from './said.ts';

export function impossible(input: Input): readonly InputProblem[] {
  return [
    ...(['air then', 'air now'] as const).flatMap(path => {
      const told = airTold(path, input[path]);
      return 'problems' in told ? told.problems : [];
    }),
    ...jets(input),
    ...pairs(input),
    ...fuels(input),
    ...needle(input),
    ...log(input),
  ];
}

const some = (...list: readonly (InputProblem | undefined)[]): readonly InputProblem[] =>
  list.filter(problem => problem !== undefined);

function jets({ jet, 'smallest good jet': good, 'jets in the box': box = [] }: Input): readonly InputProblem[] {
  const far = box.filter(size => size > 2 * jet || size < jet / 2);
  return some(
    good !== undefined && good > jet
      ? wrong(
          'smallest good jet',
          `at most the jet that was right, ${jet}`,
          String(good),
          'exchange the two, or leave it out',
        )
      : undefined,
    far.length > 0
      ? wrong(
          'jets in the box',
          `main jets numbered as the ${jet} is`,
          far.join(', '),
          'leave out pilot jets and jets numbered another way',
        )
      : undefined,
  );
}

const EXAMPLES = { 'fuel temperature': '20 °C', oil: '20:1', ethanol: '10 %' } as const;

/** Then without now, or now without then, says nothing. */
const pairs = (input: Input): readonly InputProblem[] =>
  (['fuel temperature', 'oil', 'ethanol'] as const).flatMap(name =>
    (['then', 'now'] as const).flatMap(when => {
      const other = when === 'then' ? 'now' : 'then';
      if (input[`${name} ${when}`] !== undefined || input[`${name} ${other}`] === undefined) return [];
      return [mustGive(`${name} ${when}`, `the same of ${when} beside that of ${other}`, EXAMPLES[name])];
    }),
  );

function fuels(input: Input): readonly InputProblem[] {
  const times = ['then', 'now'] as const;
  return some(
    ...times.map(when =>
      mustBe(
        `fuel temperature ${when}`,
        input[`fuel temperature ${when}`],
        '-20 °C to 50 °C',
        si => si >= 253.15 && si <= 323.15,
        'write the unit the thermometer shows; fuel that hot boils off and must not be carried to the kart',
      ),
    ),
    ...times.map(when =>
      mustBe(
        `ethanol ${when}`,
        input[`ethanol ${when}`],
        '0 % to 100 %',
        si => si >= 0 && si <= 1,
        'write it in per cent',
      ),
    ),
  );
}

function needle(input: Input): readonly InputProblem[] {
  const [ring, thick, bore] = [input['needle jet'], input.needle, input['main jet bore']];
  if (!ring && !thick && !bore) return [];
  const sizes = some(
    ...(['needle jet', 'needle', 'main jet bore'] as const).map(path =>
      mustBe(path, input[path], '0.3 mm to 10 mm', si => si >= 0.0003 && si <= 0.01, 'measure it again, in mm'),
    ),
  );
  return [
    ...sizes,
    ...some(
      ring ? undefined : mustGive('needle jet', 'the bore around the needle too', '2.68 mm'),
      thick ? undefined : mustGive('needle', 'the thickness of the needle too', '1.90 mm'),
      bore || input['numbered by'] === 'diameter'
        ? undefined
        : mustGive('main jet bore', 'the bore of the main jet: its number is no diameter', '1.65 mm'),
      ring && thick && !(thick.si < ring.si)
        ? wrong('needle', `thinner than its jet, ${ring.text}`, thick.text, 'exchange the two, or measure again')
        : undefined,
    ),
  ];
}

const log = ({ log: points = [] }: Input): readonly InputProblem[] =>
  points.flatMap(({ density, 'dry-air density': dry }, n) =>
    some(
      mustBe(
        `log/${n}/density`,
        density,
        '0.5 kg/m³ to 1.6 kg/m³, of air',
        si => si >= 0.5 && si <= 1.6,
        'take the density that was written down with that session',
      ),
      mustBe(
        `log/${n}/dry-air density`,
        dry,
        `at most the density, ${density.text}`,
        si => si <= density.si && si > 0.9 * density.si,
        'exchange the two, or leave it out',
      ),
    ),
  );

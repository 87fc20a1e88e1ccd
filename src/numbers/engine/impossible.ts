/** What no engine can be, and what is missing, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { type Asked, incomplete, measureOf, notAbove, outside, wrong } from '../asked.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import { travel } from './crank.ts';
import type { Input } from './input.ts';
import { crankOf, squishSides } from './work.ts';

type Found = readonly InputProblem[];
const DEGREE = Math.PI / 180;
const RPM = (2 * Math.PI) / 60;
const some = (...list: readonly (InputProblem | undefined)[]): Found => list.filter(each => each !== undefined);
const missing = (path: string, expected: string, example: string): InputProblem =>
  wrong(path, expected, 'nothing', `add it, for example "${example}"`);
const at = (group: string, found: Found): Found => found.map(each => ({ ...each, path: `${group}/${each.path}` }));

export function impossible(input: Input): Found {
  const all = [
    ...nothing(input),
    ...crank(input),
    ...ignition(input),
    ...ports(input),
    ...chamber(input),
    ...squish(input),
    ...pace(input),
    ...pipe(input),
    ...readings(input),
  ];
  // The first thing wrong with a key is what is said of it.
  return all.filter((each, n) => all.findIndex(other => other.path === each.path) === n);
}

const GROUPS = ['ignition', 'ports', 'chamber', 'squish', 'engine speed', 'pipe', 'compression readings'] as const;

function nothing(input: Input): Found {
  const asked = GROUPS.some(name => input[name] !== undefined) || input.power !== undefined;
  return asked
    ? []
    : [wrong('the whole input', `one of ${GROUPS.join(', ')}`, 'none of them', 'add the group that is asked about')];
}

function crank(input: Input): Found {
  const sizes = { stroke: input.stroke, rod: input.rod, bore: input.bore } as Asked;
  const needs = [
    ...(input.ignition || input.ports ? (['stroke', 'rod'] as const) : []),
    ...(input['engine speed'] ? (['stroke'] as const) : []),
    ...(input.chamber || input.power ? (['stroke', 'bore'] as const) : []),
    ...(input['base gasket change'] && input.chamber ? (['bore'] as const) : []),
  ];
  const example = { stroke: '54.5 mm', rod: '110 mm', bore: '54 mm' };
  const [offset, toward] = [input['gudgeon offset'], input['offset toward']];
  const { stroke, rod } = input;
  return [
    ...needs.flatMap(key => (input[key] ? [] : [missing(key, `the ${key} for what is asked`, example[key])])),
    ...notAbove(sizes, ['stroke', 'rod', 'bore']),
    ...outside(sizes, ['stroke', 'bore'], [0.02, 0.1], 'mm', 'write the size in full, stroke not its half'),
    ...(stroke && rod
      ? some(
          mustBe(
            'rod',
            rod,
            `more than the stroke, ${stroke.text}`,
            si => si > stroke.si,
            'exchange the two, or measure the rod from centre to centre',
          ),
        )
      : []),
    ...incomplete(
      { 'gudgeon offset': offset, 'offset toward': toward },
      ['gudgeon offset', 'offset toward'],
      'the offset of the pin',
    ),
    ...some(
      mustBe(
        'gudgeon offset',
        offset,
        '0 mm to 5 mm, without a sign',
        si => si >= 0 && si <= 0.005,
        'say the side under "offset toward"',
      ),
    ),
    ...some(
      mustBe(
        'base gasket change',
        input['base gasket change'],
        '-2 mm to 2 mm, the change and not the whole gasket',
        si => Math.abs(si) <= 0.002,
        'write new thickness less old',
      ),
    ),
    ...(input['base gasket change'] && !input.ports && !input.squish && !input.chamber
      ? [
          wrong(
            'base gasket change',
            'ports, squish or chamber that it changes',
            'none of them',
            'add one of them, or take the change out',
          ),
        ]
      : []),
  ];
}

function ignition(input: Input): Found {
  const group = input.ignition;
  if (!group) return [];
  const [drop, angle, tilt] = [group.drop, group.angle, group['gauge tilt']];
  if (!drop && !angle) return [missing('ignition/drop', 'the drop before top, or the angle', '1.6 mm')];
  if (drop && angle) return [wrong('ignition/drop', 'the drop or the angle', 'both', 'take one of them out')];
  return at(
    'ignition',
    some(
      mustBe(
        'drop',
        drop,
        '0 mm to 15 mm',
        si => si >= 0 && si <= 0.015,
        'write the drop of the piston before top, without a sign',
      ),
      mustBe(
        'angle',
        angle,
        '0° to 60° before top',
        si => si >= 0 && si <= 60 * DEGREE,
        'write degrees of the crank before top, without a sign',
      ),
      mustBe(
        'gauge tilt',
        tilt,
        '0° to 45°',
        si => si >= 0 && si <= 45 * DEGREE,
        'write the angle between gauge and bore',
      ),
    ),
  );
}

function ports(input: Input): Found {
  const group = input.ports;
  if (!group) return [];
  const { exhaust, transfer, 'measured from': datum, 'crown below the cylinder top': deck } = group;
  const crank = crankOf(input);
  const whole = crank ? travel(crank) : Number.NaN;
  const inside = (measure: Measure | undefined, path: string): InputProblem | undefined => {
    const from = datum === 'top of the cylinder' ? (deck?.si ?? 0) : 0;
    return (
      crank &&
      mustBe(
        path,
        measure,
        'a roof between top and bottom of the stroke',
        si => si - from > 0 && si - from < whole,
        'measure again from the place that is named',
      )
    );
  };
  const [low, high] = datum === 'crown at bottom' ? [transfer, exhaust] : [exhaust, transfer];
  return at('ports', [
    ...(exhaust || transfer ? [] : [missing('exhaust', 'the height of a roof', '25.5 mm')]),
    ...(datum
      ? []
      : [
          wrong(
            'measured from',
            '"crown at top", "crown at bottom" or "top of the cylinder"',
            'nothing',
            'say where the gauge stood at 0; the same figure means another port from each',
          ),
        ]),
    ...(datum === 'top of the cylinder' && !deck
      ? [missing('crown below the cylinder top', 'where the crown stands at top', '0.3 mm')]
      : []),
    ...(deck && datum && datum !== 'top of the cylinder'
      ? [
          wrong(
            'crown below the cylinder top',
            'nothing, when measured from the crown',
            deck.text,
            'take it out, or correct "measured from"',
          ),
        ]
      : []),
    ...some(
      mustBe(
        'crown below the cylinder top',
        deck,
        '-5 mm to 5 mm',
        si => Math.abs(si) <= 0.005,
        'write it as "0.3 mm"',
      ),
      inside(exhaust, 'exhaust'),
      inside(transfer, 'transfer'),
    ),
    ...(low && high && datum && !(low.si < high.si)
      ? [
          wrong(
            'transfer',
            'a transfer roof further from top than the exhaust roof',
            `${transfer?.text}, exhaust ${exhaust?.text}`,
            'exchange the two, or correct "measured from"',
          ),
        ]
      : []),
  ]);
}

function chamber({ chamber: group, bore, stroke }: Input): Found {
  if (!group) return [];
  const { liquid, 'filled to': to, 'plug thread': thread } = group;
  const top = to === 'top of the plug thread';
  const swept = bore && stroke ? (Math.PI * bore.si ** 2 * stroke.si) / 4 : Number.NaN;
  return at('chamber', [
    ...some(mustBe('liquid', liquid, 'more than 0', si => si > 0, 'write what went in')),
    ...(swept > 0
      ? some(
          mustBe(
            'liquid',
            liquid,
            'less than half of the swept volume',
            si => si < swept / 2,
            'fill at top dead centre, and write it in ml',
          ),
        )
      : []),
    ...(top && !thread ? [missing('plug thread', 'the volume of the plug hole that was filled', '2.4 ml')] : []),
    ...(!top && thread
      ? [
          wrong(
            'plug thread',
            'nothing, when the liquid stood under the thread',
            thread.text,
            'take it out, or correct "filled to"',
          ),
        ]
      : []),
    ...some(
      mustBe(
        'plug thread',
        thread,
        `more than 0 and less than the liquid, ${liquid.text}`,
        si => si > 0 && si < liquid.si,
        'exchange the two, or measure again',
      ),
    ),
  ]);
}

function squish(input: Input): Found {
  const group = input.squish;
  if (!group) return [];
  const asked = group as Asked;
  const pairs = [
    ['left', 'right'],
    ['front', 'back'],
  ] as const;
  return at('squish', [
    ...pairs.flatMap(pair => incomplete(asked, pair, 'squish from both sides')),
    ...(squishSides(group).length === 0 && !group.left && !group.right && !group.front && !group.back
      ? [missing('left', 'solder from left and right, or from front and back', '0.85 mm')]
      : []),
    ...outside(
      asked,
      ['left', 'right', 'front', 'back'],
      [0.0001, 0.005],
      'mm',
      'write the thickness of the crushed solder at its outer end',
    ),
    ...['left', 'right', 'front', 'back'].flatMap(key => {
      const { si = 0, half = 0, text = '' } = measureOf(asked, key) ?? {};
      return half < si || si === 0
        ? []
        : [wrong(key, 'limits smaller than the reading', text, 'write it as "0.85 mm ± 0.02 mm"')];
    }),
    ...outside(asked, ['least'], [0.0003, 0.003], 'mm', "write the maker's least squish"),
    ...(group['chamber diameter'] && input.bore
      ? some(
          mustBe(
            'chamber diameter',
            group['chamber diameter'],
            `above 0 and less than the bore, ${input.bore.text}`,
            si => si > 0 && si < (input.bore?.si ?? 0),
            'exchange the two, or measure again',
          ),
        )
      : []),
    ...(group['chamber diameter'] && !input.bore
      ? [wrong('chamber diameter', 'the bore beside it', 'no bore', 'add "bore"')]
      : []),
  ]);
}

function pace(input: Input): Found {
  const asked = { 'engine speed': input['engine speed'], power: input.power } as Asked;
  return [
    ...(input.power && !input['engine speed']
      ? [missing('engine speed', 'the speed at which the power was read', '12500 rpm')]
      : []),
    ...outside(asked, ['engine speed'], [500 * RPM, 25000 * RPM], 'rpm', 'write turns of the crank a minute'),
    ...notAbove(asked, ['power']),
    ...outside(asked, ['power'], [1, 100e3], 'kW', 'write the power at the crank, such as "28 kW"'),
  ];
}

function pipe(input: Input): Found {
  const group = input.pipe;
  if (!group) return [];
  const { 'gas temperature': gas, 'wave speed': wave, 'exhaust duration': duration } = group;
  const [header, diffuser, baffle] = [
    group['header diameter'],
    group['diffuser half-angle'],
    group['baffle half-angle'],
  ];
  const half = (path: string, measure: Measure | undefined): InputProblem | undefined =>
    mustBe(
      path,
      measure,
      'a half angle of 1° to 30°',
      si => si >= DEGREE && si <= 30 * DEGREE,
      'write the angle between wall and axis',
    );
  return at('pipe', [
    ...outside(group as Asked, ['tuned speed'], [2000 * RPM, 25000 * RPM], 'rpm', 'write turns of the crank a minute'),
    ...(gas || wave ? [] : [missing('gas temperature', 'the mean gas temperature, or the wave speed', '450 °C')]),
    ...(gas && wave
      ? [wrong('gas temperature', 'the temperature or the wave speed', 'both', 'take one of them out')]
      : []),
    ...(duration && input.ports?.exhaust
      ? [wrong('exhaust duration', 'the duration or the exhaust roof', 'both', 'take one of them out')]
      : []),
    ...(duration || input.ports?.exhaust
      ? []
      : [missing('exhaust duration', 'the exhaust duration, or the exhaust roof under ports', '196°')]),
    ...some(
      mustBe(
        'gas temperature',
        gas,
        '100 °C to 900 °C',
        si => si >= 373.15 && si <= 1173.15,
        'write the mean of the gas in the pipe; look whether it is in °F',
      ),
      mustBe('wave speed', wave, '350 m/s to 700 m/s', si => si >= 350 && si <= 700, '1700 ft/s is 518 m/s'),
      mustBe(
        'exhaust duration',
        duration,
        '90° to 240°',
        si => si >= 90 * DEGREE && si <= 240 * DEGREE,
        'write the whole duration, open to close',
      ),
      mustBe(
        'header diameter',
        header,
        '15 mm to 80 mm',
        si => si >= 0.015 && si <= 0.08,
        'write the diameter, not the radius',
      ),
      half('diffuser half-angle', diffuser),
      half('baffle half-angle', baffle),
    ),
    ...incomplete(
      group as Asked,
      ['header diameter', 'diffuser half-angle', 'baffle half-angle'],
      'the sections of the pipe',
    ),
  ]);
}

function readings({ 'compression readings': list }: Input): Found {
  if (!list) return [];
  if (list.length === 0)
    return [wrong('compression readings', 'at least one reading', 'none', 'add one, or take the list out')];
  return list.flatMap(({ ran, compression }, n) =>
    at(
      `compression readings/${n}`,
      some(
        mustBe(
          'ran',
          ran,
          '0 h to 500 h since piston and ring were new',
          si => si >= 0 && si <= 1.8e6,
          'count from the new piston and ring',
        ),
        mustBe(
          'compression',
          compression,
          '2 bar to 25 bar on the gauge',
          si => si >= 2e5 && si <= 25e5,
          'write what the gauge showed; one that shows nothing is looked at before it is written',
        ),
        (compression.half ?? 0) < compression.si / 2
          ? undefined
          : wrong('compression', 'limits well below the reading', compression.text, 'write it as "10.2 bar ± 0.2 bar"'),
      ),
    ),
  );
}

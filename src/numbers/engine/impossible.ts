/** What no engine can be, and what is missing, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { type Asked, incomplete, notAbove, outside, wrong } from '../asked.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import type { Input } from './input.ts';
import { at, DEGREE, type Found, missing, RPM, some } from './problem-kit.ts';
import { topEndProblems } from './top-end-problems.ts';

export function impossible(input: Input): Found {
  const all = [
    ...nothing(input),
    ...crank(input),
    ...topEndProblems(input),
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

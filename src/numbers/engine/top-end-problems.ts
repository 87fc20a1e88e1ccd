/** What ignition, ports, chamber and squish cannot be, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { type Asked, incomplete, measureOf, outside, wrong } from '../asked.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import { sweptVolume } from './compression.ts';
import { travel } from './crank.ts';
import type { Input } from './input.ts';
import { at, DEGREE, type Found, missing, some } from './problem-kit.ts';
import { crankOf } from './work.ts';

export const topEndProblems = (input: Input): Found => [
  ...ignition(input),
  ...ports(input),
  ...chamber(input),
  ...squish(input),
];

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
  const swept = sweptVolume({ bore: bore?.si ?? Number.NaN, stroke: stroke?.si ?? Number.NaN });
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
    ...(!group.left && !group.right && !group.front && !group.back
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

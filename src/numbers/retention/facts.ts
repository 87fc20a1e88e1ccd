/** What is true of each means for the sizes that were given: figures, what to do, what to reject. */
import { formatQuantity } from '../../quantity/index.ts';
import { isThread, LEAST_RUNNING_TORQUE, POUND_INCH, readThread } from '../bolt/index.ts';
import { pure } from '../figure.ts';
import type { Figure } from '../subject.ts';
import type { Asked, Input } from './input.ts';
import {
  INSERT_LIMIT,
  pinForBolt,
  pinForHole,
  STRAP_LEFT,
  strapFor,
  strapOf,
  twistsFor,
  WIRE_RULES,
} from './tables.ts';

export type Facts = {
  readonly figures: Readonly<Record<string, Figure>>;
  readonly say: readonly string[];
  readonly notes: readonly string[];
};

const length = (si: number, unit = 'mm'): Figure => ({ si, unit, text: formatQuantity(si, unit) });
const force = (si: number, unit: string): Figure => ({ si, unit, text: formatQuantity(si, unit) });
const both = (si: number): string => `${formatQuantity(si, 'mm')} (${formatQuantity(si, 'in')})`;

export const FACTS: Readonly<Record<Asked, (input: Input) => Facts>> = {
  'split pin': splitPin,
  'safety wire': safetyWire,
  strap,
  'spring clip': () => ({ figures: {}, say: [], notes: [] }),
  'locking nut': lockingNut,
};

function splitPin(input: Input): Facts {
  const thread = input.thread === undefined ? undefined : readThread(input.thread);
  const usual = thread && isThread(thread) ? pinForBolt(thread.diameter) : undefined;
  const hole = input['hole diameter']?.si;
  const pin = hole === undefined ? usual : pinForHole(hole);
  if (pin === undefined)
    return {
      figures: {},
      say: [],
      notes: ['Give "hole diameter": for this bolt no usual pin is listed, and the pin follows the hole.'],
    };
  const name = formatQuantity(pin.nominal, 'mm');
  return {
    figures: {
      'pin size': length(pin.nominal),
      'least wire of the pin': length(pin.least),
      'largest wire of the pin': length(pin.most),
    },
    say: [
      `Fit a new ${name} split pin: its wire measures ${formatQuantity(pin.least, 'mm')} to ${formatQuantity(pin.most, 'mm')}.`,
      'If more than half of the pin stands above the nut, add a washer, two at most, or use a shorter bolt.',
    ],
    notes: [
      ...(hole === undefined ? ['The pin of a bolt size is from memory: measure the hole, it decides.'] : []),
      ...(hole !== undefined && usual && usual.nominal > pin.nominal + 1e-9
        ? [`The hole is smaller than usual for this bolt: ${formatQuantity(usual.nominal, 'mm')} is.`]
        : []),
    ],
  };
}

function safetyWire(input: Input): Facts {
  const wire = input['wire diameter']?.si ?? WIRE_RULES.usual;
  const twists = twistsFor(wire);
  const [fewest, most] = WIRE_RULES.pigtailTurns;
  const [shortest, longest] = WIRE_RULES.pigtail;
  return {
    figures: {
      'wire diameter': length(wire),
      ...(twists && { 'least twists an inch': pure(twists.least), 'most twists an inch': pure(twists.most) }),
      'least pigtail turns': pure(fewest),
      'most pigtail turns': pure(most),
      'shortest pigtail': length(shortest),
      'longest pigtail': length(longest),
      'longest span': length(WIRE_RULES.longestSpan),
    },
    say: [
      ...(twists
        ? [
            `Twist ${formatQuantity(wire, 'mm')} wire ${twists.least} to ${twists.most} turns in 25 mm, taut but not over-twisted.`,
          ]
        : []),
      `Leave a pigtail of ${fewest} to ${most} turns, ${formatQuantity(shortest, 'mm', 0)} to ${formatQuantity(longest, 'mm', 0)}, cut it and bend it in.`,
      ...wireRejects(input, wire),
    ],
    notes: [
      ...(input['wire diameter'] ? [] : ['Wire taken as 0.81 mm (0.032 in), the usual one.']),
      ...(twists
        ? []
        : [
            `No twist is printed for ${formatQuantity(wire, 'mm')} wire; there is for 0.51 to 0.64, 0.81 to 1.04 and 1.30 to 1.52 mm.`,
          ]),
    ],
  };
}

function wireRejects(input: Input, wire: number): readonly string[] {
  const spacing = input.spacing?.si;
  const heads = input.heads?.si ?? 2;
  const hole = input['hole diameter']?.si;
  const r = WIRE_RULES;
  const thin = wire < r.usual - 0.00002;
  const said: string[] = [];
  if (spacing !== undefined && spacing > r.longestSpan + 1e-9)
    said.push(`Reject: heads ${both(spacing)} apart; nothing is wired over more than ${both(r.longestSpan)}.`);
  else if (spacing !== undefined && spacing >= r.wide[0] && heads > r.wideHeads)
    said.push(
      `Reject: ${heads} heads in series ${both(spacing)} apart; at most ${r.wideHeads} from ${both(r.wide[0])} on. Wire them in groups.`,
    );
  else if (spacing !== undefined && spacing * (heads - 1) > r.longestWire)
    said.push(`Reject: the group takes more than ${both(r.longestWire)} of wire. Wire it in smaller groups.`);
  if (thin && hole !== undefined && !(hole >= r.smallHoles[0] - 1e-9 && hole <= r.smallHoles[1] + 1e-9))
    said.push(
      `Reject: wire thinner than ${both(r.usual)} is for holes of ${both(r.smallHoles[0])} to ${both(r.smallHoles[1])} only.`,
    );
  if (thin && spacing !== undefined && spacing >= r.smallSpacing)
    said.push(
      `Reject: wire thinner than ${both(r.usual)} only where the heads are less than ${both(r.smallSpacing)} apart.`,
    );
  if (wire < r.small - 0.00002) said.push(`Reject: the thinnest wire is ${both(r.small)}.`);
  return said;
}

function strap(input: Input): Facts {
  const width = input['strap width']?.si;
  const load = input.load?.si;
  const unit = input.load?.unit ?? 'N';
  const listed = width === undefined ? undefined : strapOf(width);
  const needed = load === undefined ? undefined : strapFor(load);
  const figures: Record<string, Figure> = {};
  const say: string[] = [];
  if (listed) {
    figures['loop strength, new'] = force(listed.strength, unit);
    figures['loop strength, aged'] = force(STRAP_LEFT * listed.strength, unit);
    say.push(
      `The closed loop holds ${force(listed.strength, unit).text} new; count on half, ${force(STRAP_LEFT * listed.strength, unit).text}. Two bands of one loop do not hold twice that.`,
    );
    if (load !== undefined && !(STRAP_LEFT * listed.strength >= load))
      say.push(`Reject: not enough for ${force(load, unit).text}.`);
  }
  if (load !== undefined) {
    if (needed) figures['narrowest strap'] = length(needed.width);
    say.push(
      needed
        ? `For ${force(load, unit).text} use ${formatQuantity(needed.width, 'mm')} or wider.`
        : `No strap listed holds ${force(load, unit).text}: use a wire tether or a bolted means.`,
    );
  }
  return {
    figures,
    say,
    notes: [
      ...(listed && width !== undefined && width - listed.width > 1e-9
        ? [`Taken as the listed ${formatQuantity(listed.width, 'mm')} strap, the next narrower.`]
        : []),
      'Strengths are of new nylon straps of one trader; the maker of yours declares his own.',
    ],
  };
}

function lockingNut(input: Input): Facts {
  const thread = input.thread === undefined ? undefined : readThread(input.thread);
  const printed = thread && isThread(thread) ? LEAST_RUNNING_TORQUE[thread.name] : undefined;
  const least = printed === undefined ? undefined : printed * POUND_INCH;
  const unit = input['running torque']?.unit ?? 'N·m';
  const torque = (si: number): string => formatQuantity(si, unit, unit === 'N·m' ? 2 : 1);
  const running = input['running torque']?.si;
  const hot = input.temperature?.si;
  const figures: Record<string, Figure> = {
    'hottest for a plastic insert': { si: INSERT_LIMIT, unit: '°C', text: formatQuantity(INSERT_LIMIT, '°C', 0) },
  };
  if (least !== undefined) figures['least running torque, used nut'] = { si: least, unit, text: torque(least) };
  const say = [
    least === undefined
      ? 'Used again only if fingers cannot turn it down.'
      : `Used again only if it takes at least ${torque(least)} to run down.`,
    'Add what it takes to run down to the torque of the joint.',
  ];
  if (least !== undefined && running !== undefined && !(running >= least))
    say.push(`Reject: it takes only ${torque(running)}.`);
  if (hot !== undefined && !(hot <= INSERT_LIMIT))
    say.push(
      `Reject a plastic insert: ${input.temperature?.text} is over ${formatQuantity(INSERT_LIMIT, '°C', 0)}. Use an all-metal locking nut, as on discs, exhaust and cylinder.`,
    );
  if (input['part turns'] === true)
    say.push('Reject a plain locking nut: the part turns about the bolt. Use a castellated nut with a new split pin.');
  return { figures, say, notes: [] };
}

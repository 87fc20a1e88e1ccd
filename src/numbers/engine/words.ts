/** What to do, and what to doubt, about the engine. */
import { formatQuantity } from '../../quantity/index.ts';
import { small } from '../figure.ts';
import { degrees, onGauge, percent, shown } from './figures.ts';
import { DOUBTFUL_PRESSURE, PRESSURES_1973 } from './pace.ts';
import type { Squish } from './squish.ts';
import { FALL_LIMIT } from './trend.ts';
import type { Pair, Worked } from './work.ts';

const BY_HAND =
  'Caution: plug lead off and earthed, engine cold, turned by hand only; fingers out of the ports. No flame near: a port that is open lets fuel vapour out.';
const RUNNING =
  'Caution: a running engine on a stand is held fast, in the open air, with nobody in line with chain and wheels; pipe and cylinder burn.';

export const say = (worked: Worked): readonly string[] => [
  ...squishWords(worked),
  ...trendWords(worked),
  ...ignition(worked),
  ...ports(worked),
  ...chamber(worked),
  ...pace(worked),
  ...pipe(worked),
  ...(worked.ignition || worked.ports.length > 0 || worked.chamber || worked.squish.length > 0 ? [BY_HAND] : []),
  ...(worked.trend
    ? [
        'Caution: ignition off and the plug lead earthed while it is cranked; fuel vapour comes out of the plug hole, and a hot engine burns. Gloves.',
      ]
    : []),
  ...(worked.pace || worked.pipe ? [RUNNING] : []),
  "The maker's manual and the class rules win over every figure here.",
];

function ignition({ ignition: found }: Worked): readonly string[] {
  if (!found) return [];
  const gauge = found.gauge > found.drop * (1 + 1e-9) ? `, ${small(found.gauge).text} on the tilted gauge` : '';
  return [
    `Ignition at ${degrees(found.angle).text} before top: the piston stands ${small(found.drop).text} below top${gauge}.`,
    'Find top with the gauge, turn back past the mark, come up to it in the running direction: that takes the play out.',
    'More advance than the maker gives heats the piston and can seize the engine: do not go past that figure.',
  ];
}

function ports({ ports: found, gasket }: Worked): readonly string[] {
  const stated = found.map(
    ({ name, now }) =>
      `${capital(name)} opens ${degrees(now.opens).text} after top, closes ${degrees(now.closes).text} before top: ${degrees(now.duration).text} open.`,
  );
  const [exhaust, transfer] = [found.find(p => p.name === 'exhaust'), found.find(p => p.name === 'transfer')];
  const alone =
    exhaust && transfer
      ? [`Blowdown ${degrees(transfer.now.opens - exhaust.now.opens).text}: the exhaust is open alone.`]
      : [];
  const changed = found.flatMap(({ name, now, after }) =>
    after
      ? [
          `With the new gasket ${name} stands open ${degrees(after.duration).text}, it was ${degrees(now.duration).text}.`,
        ]
      : [],
  );
  const both =
    gasket === 0 || found.length === 0
      ? []
      : [
          `The base gasket moves ports and squish together: ${small(Math.abs(gasket)).text} ${gasket > 0 ? 'wider' : 'tighter'} at the squish. Measure it with solder again.`,
        ];
  return [...stated, ...alone, ...changed, ...both];
}

function chamber({ chamber: found }: Worked): readonly string[] {
  if (!found) return [];
  const trapped = Number.isFinite(found.now.trapped)
    ? `, ${formatQuantity(found.now.trapped, ':1', 1)} trapped above the exhaust roof`
    : '; trapped is not known without the exhaust roof';
  const after = found.after ? [`With the new gasket: ${formatQuantity(found.after.full, ':1', 1)} full.`] : [];
  return [
    `Compression ${formatQuantity(found.now.full, ':1', 1)} full${trapped}. Chamber ${shown(found.volume, 'cm³', 1).text}.`,
    ...after,
  ];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function squishWords({ squish: pairs }: Worked): readonly string[] {
  return pairs.flatMap(pair => {
    const after = pair.after ? [`With the new gasket: ${verdict(pair.names, pair.after)}`] : [];
    return [capital(verdict(pair.names, pair.now)), ...after, ...tilt(pair)];
  });
}

function verdict([one, other]: Pair['names'], { kind, tightest, least, tilt }: Squish): string {
  const where = Math.abs(tilt) < 1e-6 ? 'on both sides' : `on the ${tilt < 0 ? one : other}`;
  const held = `squish is ${small(tightest).text} ${where}`;
  if (kind === 'not to run')
    return `${held}, under the least of ${small(least).text}: not to run. The piston can touch the head and the engine seize or break. Open it up, then read solder again.`;
  if (kind === 'above the least') return `${held}, above the least of ${small(least).text}.`;
  if (kind === 'cannot tell')
    return `${held}, too near the least of ${small(least).text} to tell: not to run before it is read again, or opened up.`;
  return 'squish is not known on both sides: not to run before it is.';
}

function tilt({ names: [one, other], now }: Pair): readonly string[] {
  if (!(Math.abs(now.tilt) > TILT_SEEN)) return [];
  const [wide, tight] = now.tilt > 0 ? [one, other] : [other, one];
  return [
    `Tilted: the ${wide} is ${small(Math.abs(now.tilt)).text} wider than the ${tight}. Look at head, gaskets, dirt under the cylinder, and whether the rod is straight.`,
  ];
}
/** Sides further apart than this are said to be tilted [m]; common practice. */
const TILT_SEEN = 0.00005;

function pace({ pace: found }: Worked): readonly string[] {
  if (!found) return [];
  const pressure = Number.isFinite(found.pressure) ? [`Mean effective pressure ${onGauge(found.pressure).text}.`] : [];
  return [`Mean piston speed ${shown(found.piston, 'm/s', 1).text}. The rev limit is the maker's.`, ...pressure];
}

function pipe({ pipe: found }: Worked): readonly string[] {
  if (!found) return [];
  return [
    `Tuned length ${shown(found.length, 'mm', 0).text}, from the piston face to the middle of the closing cone, for an exhaust that is open ${degrees(found.duration).text}.`,
    `Gas hotter by 100 °C moves the tuned speed up ${shown(found.hotter, '%', 1).text}: a start for trials, not a result.`,
    'A pipe that works elsewhere asks for other jets: richen first, then look at the plug. Lean means seizure.',
    ...(found.cones && found.cones.bellyLength < 0
      ? ['The cones have no room in this length: steeper cones, or a thinner header pipe.']
      : []),
  ];
}

const WHY = {
  'no reading': 'Compression is not known: no reading.',
  'one reading':
    'Nothing to hold the last reading against yet: the next one on the same gauge, hot and throttle open, tells.',
  'last not hot and open':
    'The last reading was not taken hot with the throttle held open: it says nothing. Read it again.',
  'not a reading': 'Compression is not known: a reading is no number.',
} as const;

function trendWords({ trend }: Worked): readonly string[] {
  if (!trend) return [];
  if (trend.kind === 'not known') return [WHY[trend.why]];
  const { last, best, fall, half, line, until, used } = trend;
  const fallen =
    trend.last === trend.best
      ? 'the best so far'
      : `${percent(fall).text} ± ${percent(half).text} below the best of ${onGauge(best.pressure).text}`;
  const head = `Compression ${onGauge(last.pressure).text} at ${formatQuantity(last.ran, 'h', 1)} on gauge "${last.gauge}": ${fallen}.`;
  const what = {
    due: 'Down a tenth or more: the top end is due, ring and piston out and measured before it runs. A worn ring that goes can seize the engine.',
    'cannot tell':
      'It may be down a tenth: read it again on the same gauge, and take the top end as due until that says otherwise.',
    'not due': `Not down a tenth yet (${percent(FALL_LIMIT).text}).`,
  }[trend.kind];
  return [head, what, ...(line ? [lineWords(line.rate, line.half, until, used)] : [])];
}

function lineWords(rate: number, half: number, until: number | undefined, used: number): string {
  const hour = (si: number): string => formatQuantity(si * 3600, 'bar', 2);
  const clear = rate + half < 0;
  const reach =
    clear && until !== undefined
      ? ` The line is down a tenth at about ${formatQuantity(Math.floor(until / 360) * 360, 'h', 1)}.`
      : '';
  const doubt = clear ? '' : ' Whether it falls cannot be told yet from these readings.';
  return `Line through ${used} readings: ${hour(rate)} an hour, ± ${hour(half)} at 95 %.${reach}${doubt}`;
}

export function notes(worked: Worked): readonly string[] {
  const { input, pace: speed, squish, trend, chamber: held, pipe: tuned, ports: found } = worked;
  const { rod, stroke } = input;
  const own = input.squish?.least === undefined && squish.length > 0;
  return [
    ...(own ? ["Least squish 0.75 mm is common practice for 125 cm³: the maker's figure wins."] : []),
    ...(squish.length === 1
      ? [`Only ${squish[0]?.names.join(' and ')} were read: a tilt the other way is not known.`]
      : []),
    ...(speed && speed.pressure > DOUBTFUL_PRESSURE
      ? [
          `Check power, speed, bore and stroke: more than ${onGauge(DOUBTFUL_PRESSURE).text} is more than a two-stroke of this kind gives (memory).`,
        ]
      : []),
    ...(speed && Number.isFinite(speed.pressure)
      ? [
          `Printed in 1973: touring ${onGauge(PRESSURES_1973.touring).text}, full race ${onGauge(PRESSURES_1973.racing).text}; later small race engines exceed them.`,
        ]
      : []),
    ...(speed && !Number.isFinite(speed.acceleration) ? ['Acceleration is not answered: the rod is not given.'] : []),
    ...(rod && stroke && !(rod.si / stroke.si > 1.6 && rod.si / stroke.si < 2.6)
      ? [
          'Outside the range this was checked for: a rod is usually 1.6 to 2.6 strokes long (common practice). Was it measured from centre to centre?',
        ]
      : []),
    ...(found.some(({ now }) => now.duration > 3.75 || now.duration < 1.4)
      ? [
          'Outside the usual: a port open less than 80° or more than 215° (common practice). Look again at where the height was measured from.',
        ]
      : []),
    ...(found.some(({ name }) => name === 'exhaust') !== found.some(({ name }) => name === 'transfer')
      ? ['Blowdown is not answered: it needs both roofs.']
      : []),
    ...(held && (held.now.full > 20 || held.now.full < 6)
      ? [
          'Outside the usual: a full compression of 6:1 to 20:1 (common practice). Look at liquid and plug thread again.',
        ]
      : []),
    ...(held ? ['Whether the plug thread counts is for the class rules; here it was left out of the chamber.'] : []),
    ...(tuned
      ? [
          'The mean gas temperature is the unknown of every pipe: 1700 ft/s, printed in 1973, is about 420 °C. The length says nothing about width.',
        ]
      : []),
    ...(trend && trend.kind !== 'not known'
      ? [
          'One tenth below the best on the same gauge is common practice; gauges differ by more than that.',
          ...(trend.leftOut > 0
            ? [`Left out: ${trend.leftOut} taken cold, with the throttle shut, or on another gauge.`]
            : []),
          ...([trend.last, trend.best].some(({ half }) => half === undefined)
            ? ['Readings without limits were taken as good to 2 % (common practice).']
            : []),
        ]
      : []),
    ...(trend ? ['The air of the day moves a gauge too: thin air reads lower.'] : []),
  ];
}

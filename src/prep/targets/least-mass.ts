/** The least reading of the scales that shows the class minimum kept, at the end of the run and before it. */
import type { Item, Kart } from '../../kart/index.ts';
import { combine, gaugeLinks, leastReading, massAtTheEnd } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { gaugeOf } from './gauge.ts';
import type { Refine } from './model.ts';

/** Chance wanted of being heavy enough, as for every reading. */
const CHANCE = 0.95;
/** Pump petrol: 0.745 kg/l, and anything from 0.715 to 0.775. Common practice. */
const PETROL = { density: 745, half: 30 };

export const leastMass: Refine = (own, item, kart) => {
  const limit = kart.rules?.limits[item.measure?.rule ?? '']?.min;
  if (limit === undefined)
    return {
      ...own,
      say: [
        ...own.say,
        'No least mass is known: the kart names no rule set that has one. Ask the rule book of the event.',
      ],
    };
  const { name, step, u } = scalesOf(kart, item, limit.si);
  // Up to the next step of the scales; the last bits of a double are no step.
  const readAs = (least: number): string => {
    const up = step > 0 ? Math.ceil(least / step - 1e-9) * step : least;
    return formatQuantity(up, limit.unit);
  };
  const least = leastReading(limit.si, u, CHANCE);
  const fuel = fuelOf(kart);
  const before = fuel && leastReading(limit.si + fuel.mass, Math.hypot(u, fuel.u), CHANCE);
  return {
    ...own,
    target: { si: least, unit: limit.unit, text: `${readAs(least)} or more` },
    orMore: true,
    say: [
      ...own.say,
      `${readAs(least)} on ${name} shows the minimum of ${limit.text} at ${formatQuantity(CHANCE, '%')}.`,
      ...(fuel && before !== undefined
        ? [`Weighed before the run, with ${fuel.text} of fuel still to burn: ${readAs(before)} or more.`]
        : []),
    ],
  };
};

/** The scales that the item names. */
function scalesOf(kart: Kart, item: Item, mass: number): { name: string; step: number; u: number } {
  const named = item.tools.flatMap(tool => kart.instruments?.[tool] ?? []);
  const scales = named.find(one => one.resolution.dimension === 'mass');
  if (scales === undefined) return { name: 'scales without an error', step: 0, u: 0 };
  return {
    name: scales.name,
    step: scales.resolution.si,
    u: combine(gaugeLinks(gaugeOf(scales, mass, scales.resolution.si))).u,
  };
}

function fuelOf(kart: Kart): { text: string; mass: number; u: number } | undefined {
  const fuel = kart.dimensions['fuel to burn'];
  if (fuel?.dimension !== 'volume' || !(fuel.si > 0)) return undefined;
  const given = kart.dimensions['fuel density'];
  const density = given?.dimension === 'density' ? given.si : PETROL.density;
  const uDensity = given?.dimension === 'density' ? 0 : PETROL.half / Math.sqrt(3);
  const end = massAtTheEnd({ mass: 0, u: 0 }, { volume: fuel.si, uVolume: 0, density, uDensity });
  return { text: fuel.text, mass: -end.mass, u: end.u };
}

/** The engine as figures. */
import { formatQuantity } from '../../quantity/index.ts';
import { small } from '../figure.ts';
import { STANDARD_GRAVITY } from '../gravity.ts';
import type { Figure } from '../subject.ts';
import type { Chamber, Worked } from './work.ts';

export const shown = (si: number, unit: string, digits: number): Figure => ({
  si,
  unit,
  text: formatQuantity(si, unit, digits),
});
export const degrees = (si: number): Figure => shown(si, '°', 1);
/** Per cent of a fall; a fraction of a per cent says nothing on a gauge. */
export const percent = (si: number): Figure => shown(si, '%', 0);
export const onGauge = (si: number): Figure => shown(si, 'bar', 1);
const ratio = (si: number): Figure => ({ si, unit: ':1', text: formatQuantity(si, ':1', 1) });

export function figures(worked: Worked): Readonly<Record<string, Figure>> {
  const found = {
    ...timing(worked),
    ...volumes(worked),
    ...squish(worked),
    ...pace(worked),
    ...pipe(worked),
    ...trend(worked),
  };
  return Object.fromEntries(Object.entries(found).filter(([, { si }]) => !Number.isNaN(si)));
}

type Figures = Record<string, Figure>;

function timing({ ignition, ports }: Worked): Figures {
  const found: Figures = {};
  if (ignition) {
    found['ignition before top'] = degrees(ignition.angle);
    found['piston below top at ignition'] = small(ignition.drop);
    found['gauge reading at ignition'] = small(ignition.gauge);
    if (ignition.angle > 0) found['0.1 mm of drop turns'] = degrees(ignition.slope * 1e-4);
  }
  for (const { name, now, after } of ports) {
    found[`${name} roof below the crown at top`] = small(now.roof);
    found[`${name} opens after top`] = degrees(now.opens);
    found[`${name} closes before top`] = degrees(now.closes);
    found[`${name} duration`] = degrees(now.duration);
    if (after) found[`${name} duration with the new gasket`] = degrees(after.duration);
  }
  const [exhaust, transfer] = [ports.find(p => p.name === 'exhaust'), ports.find(p => p.name === 'transfer')];
  if (exhaust && transfer) {
    found.blowdown = degrees(transfer.now.opens - exhaust.now.opens);
    if (exhaust.after && transfer.after)
      found['blowdown with the new gasket'] = degrees(transfer.after.opens - exhaust.after.opens);
  }
  return found;
}

function volumes({ chamber, swept }: Worked): Figures {
  const named = (each: Chamber['now'], after: string): Figures => ({
    [`compression full${after}`]: ratio(each.full),
    [`compression trapped${after}`]: ratio(each.trapped),
  });
  return {
    'swept volume': shown(swept, 'cm³', 1),
    ...(chamber && {
      'chamber volume': shown(chamber.volume, 'cm³', 1),
      ...named(chamber.now, ''),
      ...(chamber.after && named(chamber.after, ' with the new gasket')),
    }),
  };
}

function squish({ squish: pairs, input }: Worked): Figures {
  const found: Figures = {};
  for (const { names, now, after } of pairs) {
    const pair = names.join(' to ');
    found[`tightest squish, ${pair}`] = small(now.tightest);
    const [wide, tight] = now.tilt < 0 ? [names[1], names[0]] : names;
    found[`${wide} wider than ${tight}`] = small(Math.abs(now.tilt));
    found['least squish'] = small(now.least);
    if (after) found[`tightest squish with the new gasket, ${pair}`] = small(after.tightest);
  }
  const [chamber, bore] = [input.squish?.['chamber diameter'], input.bore];
  if (chamber && bore) found['squish band of the bore'] = percent(1 - (chamber.si / bore.si) ** 2);
  return found;
}

function pace({ pace: speed }: Worked): Figures {
  if (!speed) return {};
  return {
    'mean piston speed': shown(speed.piston, 'm/s', 1),
    'acceleration at top': {
      si: speed.acceleration,
      unit: 'm/s²',
      text: `${Math.round(speed.acceleration / 100) * 100} m/s² (${Math.round(speed.acceleration / STANDARD_GRAVITY / 10) * 10} g)`,
    },
    'mean effective pressure': onGauge(speed.pressure),
  };
}

function pipe({ pipe: worked }: Worked): Figures {
  if (!worked) return {};
  const { cones } = worked;
  const mm = (si: number): Figure => shown(si, 'mm', 0);
  return {
    'wave speed': shown(worked.wave, 'm/s', 0),
    'tuned length from the piston face': mm(worked.length),
    'tuned speed gained by 100 K': shown(worked.hotter, '%', 1),
    ...(cones && {
      'header pipe length': mm(cones.headerLength),
      'diffuser length': mm(cones.diffuserLength),
      'belly length': mm(cones.bellyLength),
      'belly diameter': mm(cones.bellyDiameter),
      'baffle length': mm(cones.baffleLength),
      'outlet pipe diameter': shown(cones.outletDiameter, 'mm', 1),
      'outlet pipe length': mm(cones.outletLength),
    }),
  };
}

function trend({ trend: found }: Worked): Figures {
  if (!found || found.kind === 'not known') return {};
  const { line, until } = found;
  const hourly = (si: number): string => `${formatQuantity(si * 3600, 'bar', 2)} an hour`;
  return {
    'compression now': onGauge(found.last.pressure),
    'best compression on this gauge': onGauge(found.best.pressure),
    'fall from the best': percent(found.fall),
    'fall from the best, limits': percent(found.half),
    ...(line && {
      'compression changes by': { si: line.rate, unit: 'Pa/s', text: hourly(line.rate) },
      'compression changes by, limits at 95 %': { si: line.half, unit: 'Pa/s', text: hourly(line.half) },
    }),
    ...(line &&
      line.rate + line.half < 0 &&
      until !== undefined && { 'line is down a tenth at': shown(Math.floor(until / 360) * 360, 'h', 1) }),
  };
}

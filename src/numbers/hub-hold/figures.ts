/** The hold of a hub as figures. Margins are rounded down. */
import { formatQuantity } from '../../quantity/index.ts';
import { floorTo } from '../figure.ts';
import type { Figure } from '../subject.ts';
import { clampFor, edgePressure, hingeForce, meanPressure, slipAxial, slipMargin, slipTorque } from './clamp.ts';
import { keyForce, keyPressure, keyShear } from './key.ts';
import { pressFitHold, pressFitPressure, tubeStress } from './ring.ts';
import { CASES, FILMS, WHEELS, type Worked } from './work.ts';

export const newtons = (si: number): Figure => ({ si, unit: 'N', text: formatQuantity(si, 'N', 0) });
const torque = (si: number): Figure => ({ si, unit: 'N·m', text: formatQuantity(si, 'N·m', 1) });
const stress = (si: number): Figure => ({ si, unit: 'MPa', text: formatQuantity(si, 'MPa', 1) });
export const margin = (si: number): Figure => ({ si, unit: '', text: floorTo(si, 0.01).toFixed(2) });

/** Elastic properties of the usual pair, from memory: aluminium hub, steel axle [Pa], [1]. */
const ALUMINIUM = { modulus: 71e9, poisson: 0.33 };
const STEEL = { modulus: 210e9, poisson: 0.3 };

export function figures(worked: Worked): Readonly<Record<string, Figure>> {
  const found: Record<string, Figure> = {
    'least preload of one bolt': newtons(worked.preload),
    'least clamp force': newtons(worked.force),
  };
  for (const film of FILMS) {
    found[`torque held ${film}`] = torque(slipTorque(worked.clamp[film]));
    found[`axial force held ${film}`] = newtons(slipAxial(worked.clamp[film]));
  }
  for (const wheel of WHEELS) {
    const demands = worked.demands[wheel];
    if (demands.side) found[`side load ${wheel}`] = newtons(demands.side.axial);
    if (demands.braking) found[`braking torque ${wheel}`] = torque(demands.braking.torque);
    if (demands.drive) found[`drive torque ${wheel}`] = torque(demands.drive.torque);
    for (const each of CASES) {
      const demand = demands[each];
      if (!demand) continue;
      for (const film of FILMS)
        found[`margin ${each} ${wheel} ${film}`] = margin(slipMargin(worked.clamp[film], demand));
    }
  }
  found['preload for the wanted margin'] = newtons(preloadWanted(worked));
  return { ...found, ...seat(worked), ...key(worked), ...press(worked) };
}

/** Least preload of one bolt that gives the wanted margin clean, in every case taken by itself [N]. */
export const preloadWanted = (worked: Worked): number =>
  Math.max(
    ...WHEELS.flatMap(wheel =>
      CASES.flatMap(each => {
        const demand = worked.demands[wheel][each];
        return demand && each !== 'together' ? [clampFor(worked.clamp.clean, demand, worked.wanted)] : [];
      }),
    ),
  ) / worked.input.bolts.si;

function seat({ input, force, demands, loads, sideFactor }: Worked): Record<string, Figure> {
  const diameter = input['axle diameter'].si;
  const length = input['hub length'];
  const [offset, wall, rolling] = [input['tyre offset'], input['axle wall'], input['tyre diameter']];
  const [boltArm, axleArm] = [input['bolt to hinge'], input['axle to hinge']];
  const hinge = boltArm && axleArm ? { 'jaw force at most': newtons(hingeForce(force, boltArm.si, axleArm.si)) } : {};
  if (!length) return hinge;
  const tilting = offset && rolling && demands.outer.side;
  // Side load at the ground and load on the tyre may tilt the hub the same way: the sum is taken.
  const moment = tilting && (tilting.axial * rolling.si) / 2 + Math.abs(offset.si) * loads.outer * sideFactor;
  return {
    ...hinge,
    'mean pressure': stress(meanPressure(force, diameter, length.si)),
    ...(moment ? { 'edge pressure added': stress(edgePressure(moment, diameter, length.si)) } : {}),
    ...(wall
      ? { 'bending stress in the axle wall, at most': stress(tubeStress(force, length.si, diameter, wall.si)) }
      : {}),
  };
}

function key({ input, demands }: Worked): Record<string, Figure> {
  const [width, height, length] = [input['key width'], input['key height'], input['key length']];
  const peak = Math.max(...WHEELS.map(wheel => demands[wheel].together?.torque ?? 0));
  if (!width || !height || !length || !(peak > 0)) return {};
  const force = keyForce(peak, input['axle diameter'].si);
  const size = { width: width.si, height: height.si, length: length.si };
  return {
    'force on the key, without friction': newtons(force),
    'shear stress in the key': stress(keyShear(force, size)),
    'pressure on the key': stress(keyPressure(force, size)),
  };
}

function press({ input, clamp }: Worked): Record<string, Figure> {
  const [outside, length] = [input['hub outside diameter'], input['hub length']];
  const [wall, interference] = [input['axle wall'], input.interference];
  if (!outside || !length || !wall || !interference) return {};
  const diameter = input['axle diameter'].si;
  const pressure = pressFitPressure({
    diameter,
    outside: outside.si,
    bore: diameter - 2 * wall.si,
    interference: interference.si,
    hub: ALUMINIUM,
    axle: STEEL,
  });
  const held = pressFitHold(pressure, {
    diameter,
    outside: outside.si,
    length: length.si,
    friction: clamp.film.friction,
  });
  return {
    'press-fit pressure, ring without slot': stress(pressure),
    'axial force of that press fit with a film': newtons(held.axial),
    'hoop stress of that press fit': stress(held.hoop),
  };
}

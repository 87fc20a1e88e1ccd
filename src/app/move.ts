/** What to move, which way and how far, so that a reading comes to its target or inside its limits. */
import type { Item, Kart } from '../kart/index.ts';
import { acceptance, differenceText, type Judgement, rearTrackTarget, typedAs } from '../numbers/index.ts';
import { limitsOf, toward } from '../prep/index.ts';
import { formatQuantity, inchFraction, type Measure } from '../quantity/index.ts';
import { toeMove } from './toe-move.ts';

export type Asked = {
  readonly kart: Kart;
  readonly item: Item;
  readonly judged: Judgement;
  readonly readings: readonly Measure[];
};

export type Move = {
  /** 'Move the left hub out 1/8 in.'; null when nothing is to be moved, or the way is for the person to judge. */
  readonly move: string | null;
  /** What the reading says besides. */
  readonly say: readonly string[];
};

const STAYS: Move = { move: null, say: [] };
const CHANCE = 0.95;
const INCH = 0.0254;

export function moveFor(asked: Asked): Move {
  const { kart, item, judged, readings } = asked;
  if (readings[0] === undefined) return STAYS;
  if (item.measure?.number === 'toe') return toeMove(kart, item, judged);
  return { move: moveOf(asked, judged), say: [] };
}

function moveOf(asked: Asked, judged: Judgement): string | null {
  const { measure } = asked.item;
  switch (measure?.number) {
    case 'rear-track':
      return judged.target && hubMove(asked, judged.target);
    case 'brake-bias':
      return judged.target && barMove(judged.target);
    case 'least-mass':
      return ballastMove(asked);
    default:
      return measure?.dimension === 'overall rear width' ? widthMove(asked) : null;
  }
}

type Off = NonNullable<Judgement['target']>;
type Size = (si: number) => string;

/** A difference as a person would set it with what was read: marks of the tape, or the unit. */
function sizes(readings: readonly Measure[]): { readonly size: Size; readonly marks: number | undefined } {
  const [first] = readings as readonly [Measure, ...Measure[]];
  const typed = typedAs(readings);
  return { size: si => differenceText(si, { ...first, typed }), marks: typed.marks };
}

/** Half each side; up to the next mark, so that both together are enough. */
function widthMove({ kart, item, judged, readings }: Asked): string | null {
  const limit = limitsOf(kart, item).max;
  const over = limit === undefined ? 0 : judged.mean.si - limit.si;
  if (judged.state !== 'outside' || !(over > 0)) return null;
  const { size, marks } = sizes(readings);
  const each = marks === undefined ? over / 2 : (Math.ceil((over / 2 / INCH) * marks - 1e-6) * INCH) / marks;
  return `Move both hubs in, each ${size(each)} or more.`;
}

/**
 * The gap from bearing face to hub grows as the hub goes out. A move out takes the mark below where the nearest one, set
 * on both sides, would pass the limit of the rule set.
 */
function hubMove({ kart, item, readings }: Asked, { by, way, size: said }: Off): string | null {
  if (way === 'on') return null;
  const corner = kart.parts[item.part]?.corner ?? 'whole';
  const hub = corner === 'whole' ? 'hub' : `${corner.replace('rear ', '')} hub`;
  if (way === 'over') return `Move the ${hub} in ${said}.`;
  const { size, marks } = sizes(readings);
  const limit = kart.rules?.limits['overall rear width']?.max;
  const aim = rearTrackTarget(kart.dimensions, limit);
  if (marks === undefined || limit === undefined || 'missing' in aim) return `Move the ${hub} out ${said}.`;
  const far = -by + inchFraction(-by, marks).errorMetres;
  const passes = aim.width + 2 * (far + by) > limit.si;
  const mark = INCH / marks;
  return passes && far <= mark ? null : `Move the ${hub} out ${size(passes ? far - mark : far)}.`;
}

const barMove = ({ by, way, size }: Off): string | null =>
  way === 'on'
    ? null
    : `Move the bearing of the bar ${size} ${toward(-by)}; lock ring tight, then try the brakes at walking pace first.`;

/** Up to the next step of the scales, so that the weight then shown proves the least mass. */
function ballastMove({ kart, item, judged }: Asked): string | null {
  const min = limitsOf(kart, item).min;
  if (min === undefined || judged.state === 'inside') return null;
  const { min: least = Number.NaN } = acceptance(
    { min: min.si },
    judged.uncertainty.si,
    CHANCE,
    judged.freedom ?? Number.POSITIVE_INFINITY,
  );
  const step = judged.resolution.si;
  const short = Math.ceil((least - judged.mean.si) / step - 1e-9) * step;
  if (!(short > 0)) return null;
  return `Add ${formatQuantity(short, judged.mean.unit)} of ballast or more, bolted as the class asks, and weigh again.`;
}

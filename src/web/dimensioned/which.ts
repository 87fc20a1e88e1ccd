/** Which dimensioned drawing a reading belongs on. Small, for the step asks it before the drawings are fetched. */
import type { Item } from '../../kart/index.ts';

export const DRAWINGS = ['rear axle', 'front end'] as const;
export type DrawingName = (typeof DRAWINGS)[number];

const REAR: readonly string[] = ['rear-track', 'hub-engagement', 'overall rear width', 'centred', 'chain line'];
const FRONT: readonly string[] = ['toe', 'overall front width', 'caster', 'ride height front', 'spacers'];

/** Undefined where neither drawing has it. */
export function drawnOn({ key, measure, part }: Item): DrawingName | undefined {
  const names = [measure?.number, measure?.dimension, key];
  if (names.some(name => name !== undefined && REAR.includes(name))) return 'rear axle';
  if (part === 'axle' && key === 'straight') return 'rear axle';
  return names.some(name => name !== undefined && FRONT.includes(name)) ? 'front end' : undefined;
}

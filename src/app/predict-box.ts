/** The sprockets at hand as a person types them: teeth behind, or in front and behind with a stroke between. */
import { Refusal, refuse } from './problem.ts';

const FEWEST = 5;
const MOST = 120;

/** '21, 22, 23' or '16 17 / 21 22 23'; undefined where nothing was typed. */
export function boxTyped(
  text: string | undefined,
): { readonly front: readonly number[]; readonly rear: readonly number[] } | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  const [rear = [], front = [], ...more] = text.split('/').map(teethIn).toReversed();
  const all = [...front, ...rear];
  if (more.length === 0 && rear.length > 0 && all.every(teeth => teeth >= FEWEST && teeth <= MOST))
    return { front, rear };
  throw new Refusal([
    refuse(
      'wrong shape',
      'box',
      `Expected the teeth of the sprockets in the box, ${FEWEST} to ${MOST} each, got "${text}".`,
      'Write those behind like 21, 22, 23; with those in front like 16, 17 / 21, 22, 23.',
    ),
  ]);
}

const teethIn = (text: string): readonly number[] => [
  ...new Set(
    text
      .split(/[\s,;]+/)
      .filter(word => word !== '')
      .map(word => (/^\d+$/.test(word) ? Number(word) : Number.NaN)),
  ),
];

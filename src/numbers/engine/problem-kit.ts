/** Small words for the problems of an engine. */
import { wrong } from '../asked.ts';
import type { InputProblem } from '../subject.ts';

export type Found = readonly InputProblem[];
export const DEGREE = Math.PI / 180;
export const RPM = (2 * Math.PI) / 60;

/** Those of a list that are problems. */
export const some = (...list: readonly (InputProblem | undefined)[]): Found => list.filter(each => each !== undefined);

export const missing = (path: string, expected: string, example: string): InputProblem =>
  wrong(path, expected, 'nothing', `add it, for example "${example}"`);

/** Problems of a group, with its name before their paths. */
export const at = (group: string, found: Found): Found =>
  found.map(each => ({ ...each, path: `${group}/${each.path}` }));

/**
 * A problem that can be asked bare, with no kart and no book: `kartwright calc NAME`, one problem or an array of them,
 * JSON in and JSON out. So anyone can measure what the plan, the fault trees and the lives are made with.
 */
import { z } from 'zod';
import { type InputProblem, type Problems, problems, shaped } from '../numbers/index.ts';

/** What comes out for one problem: plain JSON. */
export type Solution = Readonly<Record<string, unknown>>;

export type BareProblem = {
  readonly name: string; // 'schedule'
  readonly title: string;
  /** How it is solved, how good that is, and from which sources: sentences. */
  readonly how: readonly string[];
  readonly sources: readonly string[];
  /** Shape of the question, one problem or an array of them; `z.toJSONSchema(schema, { io: 'input' })` describes it. */
  readonly schema: z.ZodType;
  /** A problem that can be asked as it stands. */
  readonly example: Readonly<Record<string, unknown>>;
  /** The key under which a question written in XML stands; undefined where none is read. */
  readonly xml?: string;
  /** One solution for one problem, an array for an array. Never throws on input from outside. */
  readonly ask: (input: unknown) => Solution | readonly Solution[] | Problems;
};

/**
 * Takes one problem or an array, checks the shape of each, then solves each. What is wrong with any of them is said
 * before the first is solved: all problems with `check`, which holds what a shape cannot say.
 */
export function bareProblem<T>(
  about: Pick<BareProblem, 'name' | 'title' | 'how' | 'sources' | 'example' | 'xml'> & {
    readonly schema: z.ZodType<T>;
    readonly check: (one: T) => readonly InputProblem[];
    readonly solve: (one: T) => Solution;
  },
): BareProblem {
  const { schema, check, solve, ...rest } = about;
  const ask = (input: unknown): Solution | readonly Solution[] | Problems => {
    const asked: readonly unknown[] = Array.isArray(input) ? input : [input];
    const at = (n: number, path: string): string => (Array.isArray(input) ? `${n}/${path}` : path);
    const read: T[] = [];
    const against: InputProblem[] = [];
    asked.forEach((one, n) => {
      const found = shaped(one, about);
      const wrong = found.kind === 'shaped' ? check(found.value) : found.problems;
      against.push(...wrong.map(problem => ({ ...problem, path: at(n, problem.path) })));
      if (found.kind === 'shaped') read.push(found.value);
    });
    if (against.length > 0) return problems(...against);
    const solved = read.map(solve);
    return Array.isArray(input) ? solved : (solved[0] ?? {});
  };
  return { ...rest, schema: z.union([schema, z.array(schema)]), ask };
}

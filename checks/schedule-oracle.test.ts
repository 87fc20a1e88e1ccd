/**
 * Optima of small invented problems, proven in this run by Chuffed, a solver by lazy clause generation, out of the package
 * minizinc 4.5.1, from models of our own in test/oracle. It shares neither code nor method with our search.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { leastRemoval } from '../src/prep/removal/index.ts';
import { type Schedule, type ScheduleProblem, solve } from '../src/prep/schedule/index.ts';
import { kartProblem, plainProblem, removalData, removalProblem, scheduleData } from '../test/oracle/problems.ts';
import { type Asked, canProve, type Proof, prove } from '../test/oracle/prove.ts';
import { faults } from '../test/schedules.ts';

const EFFORT = { schedules: 1000, seed: 1 };
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

type Case = { readonly problem: ScheduleProblem; readonly ours: Schedule };
const solved = (problem: ScheduleProblem): Case => ({ problem, ours: solve(problem, EFFORT) });
const asked = (model: Asked['model'], { problem, ours }: Case): Asked => ({ model, data: scheduleData(problem, ours) });

const plain = SEEDS.slice(0, 6).map(seed => solved(plainProblem(seed)));
const kart = SEEDS.map(seed => solved(kartProblem(seed)));
const removals = SEEDS.slice(0, 4).map(removalProblem);

if (!canProve()) console.log('The package minizinc is not installed: no optimum was proven, nothing was compared.');

describe.runIf(canProve())('beside what a solver of others proves', () => {
  let proofs: readonly Proof[] = [];
  beforeAll(async () => {
    proofs = await prove([
      ...plain.map(one => asked('plain', one)),
      ...kart.map(one => asked('kart', one)),
      ...removals.map(one => ({ model: 'removal' as const, data: removalData(one) })),
    ]);
  }, 240_000);

  /** Compares each with its optimum; answers how many meet it. */
  function compare(cases: readonly Case[], from: number): number {
    const met = cases.map(({ problem, ours }, n) => {
      const proof = proofs[from + n];
      expect(faults(problem, ours), problem.id).toEqual([]);
      expect(proof?.status, problem.id).toBe('OPTIMAL_SOLUTION'); // UNSATISFIABLE: ours breaks a rule of the model
      const least = Number(proof?.solution?.makespan);
      expect(ours.makespan, problem.id).toBeGreaterThanOrEqual(least);
      expect(ours.bound.ticks, problem.id).toBeLessThanOrEqual(least);
      return ours.makespan === least;
    });
    return met.filter(Boolean).length;
  }

  test('a schedule is never shorter than the optimum nor its bound longer, and all 6 of 6 meet it', () => {
    expect(compare(plain, 0)).toBe(6);
  });

  test('at the kart, with postures, two people, second looks and windows, the same, and at least 7 of 8 meet it', () => {
    expect(kart.filter(({ ours }) => ours.kart?.tooSoon.length === 0)).toHaveLength(8);
    expect(compare(kart, plain.length)).toBeGreaterThanOrEqual(7);
  });

  test('what must come off is the cheapest there is, with ways in that run in circles', () => {
    for (const [n, problem] of removals.entries()) {
      const proof = proofs[plain.length + kart.length + n];
      expect(proof?.status).toBe('OPTIMAL_SOLUTION');
      const off = proof?.solution?.off as readonly boolean[];
      const least = problem.parts.reduce((sum, { minutes }, p) => sum + (off[p] ? minutes : 0), 0);
      expect(leastRemoval(problem)).toMatchObject({ kind: 'found', minutes: least, bound: least, proven: true });
    }
  });
});

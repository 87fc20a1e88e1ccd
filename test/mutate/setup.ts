/** The same tries for every mutant, and few, since each runs them again; a failure is enough, its smallest case is not sought. */
import fc, { type IRawProperty, type Parameters } from 'fast-check';
import { vi } from 'vitest';

const TRIES = 20;

fc.configureGlobal({ seed: 20261125, numRuns: TRIES, endOnFailure: true });

/** Also where a test asks for more. */
vi.mock('fast-check', async original => {
  const real = await original<typeof import('fast-check')>();
  const assert = <Ts>(property: IRawProperty<Ts>, asked: Parameters<Ts> = {}) =>
    real.assert(property, { ...asked, numRuns: Math.min(asked.numRuns ?? TRIES, TRIES) });
  return { ...real, assert, default: { ...real.default, assert } };
});

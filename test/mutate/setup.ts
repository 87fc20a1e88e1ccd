/** The same tries for every mutant, and few, since each runs them again; a failure is enough, its smallest case is not sought. */
import fc from 'fast-check';

fc.configureGlobal({ seed: 20261125, numRuns: 20, endOnFailure: true });

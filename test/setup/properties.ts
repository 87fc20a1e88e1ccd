/** One seed for every property test in CI, so that a red run can be repeated; by hand each run looks somewhere new. */
import fc from 'fast-check';

const CI_SEED = 20261125;
const asked = process.env.KARTWRIGHT_SEED;
const seed = asked ? Number(asked) : process.env.CI ? CI_SEED : undefined;

if (seed !== undefined) fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });

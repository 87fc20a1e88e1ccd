/** What must come off an invented kart of 1000 parts for 500 jobs, beside the optimum that integer programming proved. */
import { leastRemoval, type RemovalAsk } from '../src/prep/removal/index.ts';
import { type Figure, median, ms, times } from './measure.ts';
import { workload } from './workload.ts';

const PARTS = 1000;
const JOBS = 500;
const SEED = 1;
/** HiGHS 1.15.3 (MIP of the AND/OR graph), run once outside the project on the kart of this size and seed [min]. */
const OPTIMUM = 6383;

export async function removals(): Promise<readonly Figure[]> {
  const ask = inventedKart(PARTS, JOBS, SEED);
  const found = leastRemoval(ask);
  if (found.kind !== 'found') throw new Error(`bench: the kart must be open to all wishes, got ${found.kind}`);
  if (found.minutes < OPTIMUM || found.bound > OPTIMUM)
    throw new Error(`bench: ${OPTIMUM} must lie between bound and minutes, got ${found.bound} and ${found.minutes}`);
  const took = await median(5, () => leastRemoval(ask));
  const over = (100 * (found.minutes - OPTIMUM)) / OPTIMUM;
  return [
    {
      what: `least removal, ${PARTS} parts, ${JOBS} jobs: ${found.minutes} min, ${over.toFixed(2)} % over the optimum, ${found.proven ? 'proven' : `bound ${found.bound}`}`,
      value: ms(took),
      ratio: `${times(took, 500, 'the 0.5 s wished for')}; ${times(took, await workload(), 'the fixed workload')}`,
    },
  ];
}

/** Parts in eight systems from the outside in, a third with two ways in; jobs done on a part in place or off. */
function inventedKart(partCount: number, jobCount: number, seed: number): RemovalAsk {
  const { share, whole, pick } = xorshift(seed);
  const systems = Array.from({ length: 8 }, (): string[] => []);
  const parts = Array.from({ length: partCount }, (_, n) => {
    const own = systems[n % systems.length] ?? [];
    const access: string[][] = [];
    if (own.length > 0 && share() < 0.75) {
      const ways = share() < 0.3 ? 2 : 1;
      for (let way = 0; way < ways; way++) {
        const near = own.slice(-8);
        const most = Math.min(whole(1, Math.min(2, own.length)), near.length);
        const set = new Set<string>();
        while (set.size < most) set.add(pick(near));
        if (share() < 0.1 && n > 8) set.add(`p${whole(0, n - 1)}`);
        access.push([...set]);
      }
    }
    const minutes = whole(1, 6) + whole(2, 8) + whole(1, 3);
    if (share() >= 0.25) share(); // posture
    share(); // crew
    share(); // critical
    own.push(`p${n}`);
    return { id: `p${n}`, access, minutes };
  });
  const wishes = Array.from({ length: jobCount }, (_, n) => {
    const part = share() < 0.85 ? parts[whole(0, partCount - 1)] : undefined;
    const inPlace = share() < 0.4;
    if (share() >= 0.2 && share() >= 0.5) share(); // tier
    if (!part) share(); // system
    whole(3, 25); // minutes
    if (part) share(); // posture
    share(); // crew
    if (share() < 0.3) whole(1, 6); // tools
    whole(1, 9); // value
    if (n > 0 && share() < 0.15) whole(0, n - 1); // after
    return { id: `j${n}`, ways: part ? (inPlace ? part.access : [[part.id]]) : [] };
  });
  return { parts, wishes };
}

/** Marsaglia's xorshift of 32 bits: the generator with which the optimum was found. */
function xorshift(seed: number) {
  let state = (Math.imul(seed, 2654435761) ^ 0x9e3779b9) >>> 0 || 1;
  const share = (): number => {
    state = (state ^ (state << 13)) >>> 0;
    state = (state ^ (state >>> 17)) >>> 0;
    state = (state ^ (state << 5)) >>> 0;
    return state / 2 ** 32;
  };
  const whole = (low: number, high: number): number => low + Math.floor(share() * (high - low + 1));
  const pick = (of: readonly string[]): string => of[Math.floor(share() * of.length)] ?? '';
  return { share, whole, pick };
}

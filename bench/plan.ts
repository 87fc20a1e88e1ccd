/** How long a person waits for the plan of the next event, from a book of some seasons. */
import { fold } from '../src/book/index.ts';
import { dueList, makePlan, nextEvent } from '../src/prep/index.ts';
import { fitness } from '../src/risk/index.ts';
import { dayAfter, inventBook } from './facts.ts';
import { benchKart } from './kart.ts';
import { type Figure, median, megabytes, ms, times, used } from './measure.ts';

const FACTS = 10_000;

export async function plans(): Promise<readonly Figure[]> {
  const kart = benchKart();
  const facts = inventBook(kart, FACTS);
  const now = dayAfter(facts);
  const state = fold(facts);
  const event = nextEvent(state, now);
  const at = event ? { now, event } : { now };
  const plan = makePlan(kart, state, at);
  const whole = await median(5, () => makePlan(kart, fold(facts), at));
  const folding = await median(5, () => fold(facts));
  return [
    {
      what: `facts to plan: ${FACTS} facts, ${Object.keys(kart.items).length} items, ${plan.steps.length} steps`,
      value: ms(whole),
      ratio: times(whole, folding, 'the fold alone'),
    },
    { what: 'the same, heap used on the way', value: megabytes(used(() => makePlan(kart, fold(facts), at))) },
    { what: 'fold', value: ms(folding) },
    { what: 'due list', value: ms(await median(5, () => dueList(kart, state, at))) },
    { what: 'plan from the state', value: ms(await median(5, () => makePlan(kart, state, at))) },
    { what: 'plan into 180 minutes', value: ms(await median(3, () => makePlan(kart, state, { ...at, minutes: 180 }))) },
    { what: 'fitness', value: ms(await median(5, () => fitness(kart, state, at))) },
    { what: 'reading the kart file and its library', value: ms(await median(5, benchKart)) },
  ];
}

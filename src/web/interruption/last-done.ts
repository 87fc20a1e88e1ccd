/** The steps a person did last, by their names alone: a result shown here would be seen by a second look. */
import type { FactLine } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { interruptionWords } from '../words/interruption.ts';

export type Done = { readonly fact: string; readonly did: string; readonly on: string; readonly at: string };

/** Newest first, as the lines are. What was struck was not done; a run or a release ends what was going on. */
export function lastDone(lines: readonly FactLine[], kart: Kart, who: string, most = 3): readonly Done[] {
  const done: Done[] = [];
  for (const { fact, struck } of lines) {
    if (done.length === most || fact.kind === 'ran' || fact.kind === 'released') break;
    if (struck !== null || fact.by !== who) continue;
    const said = saidOf(fact, kart);
    if (said !== undefined) done.push({ fact: fact.id, at: fact.at, ...said });
  }
  return done;
}

function saidOf(fact: Fact, kart: Kart): { readonly did: string; readonly on: string } | undefined {
  const item = (id: string, did: string) => {
    const known = kart.items[id];
    return { did, on: known ? `${known.title}, ${known.part}` : id };
  };
  switch (fact.kind) {
    case 'taken off':
      return { did: interruptionWords.takenOff, on: fact.part };
    case 'fitted':
      return { did: interruptionWords.putBack, on: fact.part };
    case 'made':
      return item(fact.joint, fact.secondLook ? interruptionWords.secondLook : interruptionWords.made);
    case 'checked':
      return item(fact.item, fact.secondLook ? interruptionWords.secondLook : interruptionWords.checked);
    case 'set':
      return item(fact.item, interruptionWords.set);
    case 'loosened':
      return item(fact.joint, interruptionWords.opened);
    case 'put on':
      return { did: interruptionWords.kartPut, on: fact.posture };
    case 'mended':
      return { did: interruptionWords.mended, on: fact.how };
    default:
      return undefined;
  }
}

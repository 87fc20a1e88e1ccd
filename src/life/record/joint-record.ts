/**
 * What the record says of each joint: over how many events it ran and was looked at afterwards, and when it had let go.
 *
 * - An event counts once somebody has looked at the joint after it ran there. What nobody looked at says nothing.
 * - It had let go when it failed while it ran, when its check failed, or a defect of safety or reliability was found at it; again only
 *   once it was made or passed in between. A fail with no running since it was last seen right was caught before it could matter.
 * - Made while it was made already is a look at it. One that was open by hand is made anew: what it did before is not known.
 * - The kart file in force says how joints are held. Whether a second retention was there before it was filed is not known: of the
 *   second only what came after counts.
 */
import { type Fact, inOrder, struckFacts } from '../../book/index.ts';
import { changesKart, disturbersOf, type Joint, type JointId, type Kart } from '../../kart/index.ts';
import type { KartBook } from './part-lives.ts';

export type LetGo = {
  readonly fact: string;
  readonly says: string; // as the person said it
  readonly whole: boolean; // it failed as it ran: whatever held it let go
};
export type JointTimes = { readonly events: number; readonly letGo: readonly LetGo[] };
export type JointRecord = {
  readonly kart: string;
  readonly joint: Joint;
  readonly all: JointTimes;
  /** Since the kart file in force was filed. */
  readonly filed: JointTimes;
};

export const jointRecords = (books: readonly KartBook[]): readonly JointRecord[] =>
  books.flatMap(({ kart, facts }) => {
    const struck = struckFacts(facts);
    const walk = new Walk(kart);
    for (const fact of inOrder(facts)) if (fact.kind !== 'struck' && !struck.has(fact.id)) walk.take(fact);
    return walk.records();
  });

/** One joint as the facts go by. */
type Seen = {
  since: number; // how many runs there were when it was last seen, or made
  known: boolean; // seen right, or made, on record: before that a fail is of unknown age
  last: string; // the event that was counted last
  bad: boolean;
  open: boolean;
  all: { events: number; letGo: LetGo[] };
  filed: { events: number; letGo: LetGo[] };
};

class Walk {
  readonly #kart: Kart;
  readonly #seen: ReadonlyMap<JointId, Seen>;
  /** Joints that a part coming off opens, and that an item opens once it is done. */
  readonly #byPart = new Map<string, JointId[]>();
  readonly #byItem = new Map<string, JointId[]>();
  readonly #runs: string[] = []; // the event of each

  constructor(kart: Kart) {
    this.#kart = kart;
    this.#seen = new Map(Object.keys(kart.joints).map(id => [id, unseen()]));
    for (const { id, part } of Object.values(kart.joints)) push(this.#byPart, part, id);
    for (const [joint, items] of disturbersOf(kart).openers) for (const item of items) push(this.#byItem, item, joint);
  }

  records(): readonly JointRecord[] {
    return [...this.#seen].map(([id, { all, filed }]) => ({
      kart: this.#kart.name,
      joint: this.#kart.joints[id] as Joint,
      all,
      filed,
    }));
  }

  take(fact: Fact): void {
    switch (fact.kind) {
      case 'ran':
        this.#runs.push(fact.event ?? fact.at.slice(0, 10));
        break;
      case 'kart filed':
        for (const seen of this.#seen.values()) seen.filed = { events: 0, letGo: [] };
        break;
      case 'taken off':
      case 'moved':
        this.#open(this.#byPart.get(fact.part));
        break;
      case 'loosened':
        this.#open([fact.joint]);
        break;
      case 'set':
        this.#open(this.#byItem.get(fact.item));
        break;
      case 'made':
        this.#made(fact.joint);
        break;
      case 'failed':
        if (fact.joint !== undefined) this.#letGo(fact.joint, { fact: fact.id, says: fact.how, whole: true });
        break;
      case 'found':
        if (fact.item !== undefined && (fact.grade === 'safety' || fact.grade === 'reliability'))
          this.#letGo(fact.item, { fact: fact.id, says: fact.defect, whole: false });
        break;
      case 'checked': {
        if (fact.result === 'not possible') break;
        if (fact.result === 'fail') this.#letGo(fact.item, { fact: fact.id, says: fact.why ?? '', whole: false });
        else this.#right(fact.item);
        const item = this.#kart.items[fact.item];
        if (item && fact.result === 'pass' && changesKart(item)) this.#open(this.#byItem.get(item.id));
        break;
      }
      default:
        break;
    }
  }

  #open(joints: readonly JointId[] = []): void {
    for (const id of joints) {
      const seen = this.#seen.get(id);
      if (seen) seen.open = true;
    }
  }

  #made(id: JointId): void {
    const seen = this.#seen.get(id);
    if (!seen) return;
    if (!seen.open) this.#count(seen);
    this.#fresh(seen);
    seen.open = false;
  }

  #right(id: JointId): void {
    const seen = this.#seen.get(id);
    if (!seen) return;
    if (!seen.open) this.#count(seen);
    this.#fresh(seen);
  }

  #letGo(id: JointId, how: LetGo): void {
    const seen = this.#seen.get(id);
    if (!seen || seen.bad || (seen.open && !how.whole)) return;
    const ran = this.#runs.length > seen.since;
    const counted = this.#count(seen);
    if (ran || !seen.known || how.whole) {
      const more = Math.max(0, 1 - counted); // it let go over one event at least
      for (const of of [seen.all, seen.filed]) {
        of.events += more;
        of.letGo.push(how);
      }
    }
    seen.bad = true;
    seen.since = this.#runs.length;
    if (how.whole) seen.open = true;
  }

  /** Adds the events since it was last seen; one that goes on counts once. */
  #count(seen: Seen): number {
    const events = new Set(this.#runs.slice(seen.since));
    events.delete(seen.last);
    seen.last = this.#runs.at(-1) ?? seen.last;
    seen.all.events += events.size;
    seen.filed.events += events.size;
    return events.size;
  }

  #fresh(seen: Seen): void {
    seen.since = this.#runs.length;
    seen.known = true;
    seen.bad = false;
  }
}

const unseen = (): Seen => ({
  since: 0,
  known: false,
  last: '',
  bad: false,
  open: false,
  all: { events: 0, letGo: [] },
  filed: { events: 0, letGo: [] },
});

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

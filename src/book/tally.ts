/**
 * The fold itself: takes facts that count, one after another in order, and keeps the sum. Containers are private and
 * change; what lies in them is replaced, never changed, so a state once handed out stays as it was.
 */
import { type Age, ageAt } from './age.ts';
import type { Fact, FactOf, Reading } from './fact.ts';
import type {
  Defect,
  Expected,
  Impact,
  ItemState,
  JointState,
  KartEvent,
  Mark,
  PartState,
  Pass,
  Release,
  Run,
  Said,
  State,
} from './state.ts';
import type { Struck } from './strikes.ts';

const READINGS_KEPT = 20;
/** A one-day event without an end lasts at least this long; common practice, a race day from sign-on to the last flag. */
const RACE_DAY_MS = 12 * 3_600_000;

/** Without a prototype, so that a part called `constructor` is as unknown as any other. */
const table = <T>(from?: Readonly<Record<string, T>>): Record<string, T> => Object.assign(Object.create(null), from);

export class Tally {
  readonly #struck: Record<string, Struck>;
  readonly #runs: Run[];
  readonly #impacts: Impact[];
  readonly #parts: Record<string, PartState>;
  readonly #items: Record<string, ItemState>;
  readonly #joints: Record<string, JointState>;
  readonly #defects: Defect[];
  readonly #defectOf: Map<string, number>;
  readonly #events: Record<string, KartEvent>;
  readonly #settings: Record<string, Mark & { readonly value: string }>;
  readonly #expected: Record<string, Expected>;
  readonly #releases: Release[];
  #count: number;
  #minutes: number;
  #laps: number;
  #last: Mark | undefined;
  /** What is single: the latest of its kind. */
  #latest: Pick<State, 'meterHours' | 'posture' | 'tyres' | 'filed'>;

  /** @param from the state of the facts before; left out, there are none */
  constructor(struck: ReadonlyMap<string, Struck>, from?: State) {
    this.#struck = table();
    for (const [id, by] of struck) this.#struck[id] = by;
    this.#runs = [...(from?.runs ?? [])];
    this.#impacts = [...(from?.impacts ?? [])];
    this.#parts = table(from?.parts);
    this.#items = table(from?.items);
    this.#joints = table(from?.joints);
    this.#defects = [...(from?.defects ?? [])];
    this.#defectOf = new Map(this.#defects.map(({ fact }, place) => [fact, place]));
    this.#events = table(from?.events);
    this.#settings = table(from?.settings);
    this.#expected = table(from?.expected);
    this.#releases = [...(from?.releases ?? [])];
    this.#count = from?.count ?? 0;
    this.#minutes = from?.minutes ?? 0;
    this.#laps = from?.laps ?? 0;
    this.#last = from?.last;
    this.#latest = from ? latestOf(from) : {};
  }

  state(): State {
    return {
      ...this.#latest,
      ...(this.#last ? { last: this.#last } : {}),
      count: this.#count,
      minutes: this.#minutes,
      laps: this.#laps,
      runs: [...this.#runs],
      impacts: [...this.#impacts],
      parts: table(this.#parts),
      items: table(this.#items),
      joints: table(this.#joints),
      defects: [...this.#defects],
      events: table(this.#events),
      settings: table(this.#settings),
      expected: table(this.#expected),
      releases: [...this.#releases],
      struck: table(this.#struck),
    };
  }

  add(fact: Fact): void {
    this.#count++;
    if (fact.kind === 'ran') {
      this.#minutes += fact.minutes;
      this.#laps += fact.laps ?? 0;
    }
    const mark: Mark = {
      pos: this.#count,
      fact: fact.id,
      at: fact.at,
      by: fact.by,
      minutes: this.#minutes,
      laps: this.#laps,
    };
    this.#last = mark;
    this.#apply(fact, mark);
  }

  #apply(fact: Fact, mark: Mark): void {
    switch (fact.kind) {
      case 'kart filed':
        this.#latest = { ...this.#latest, filed: mark };
        break;
      case 'event':
        this.#events[fact.event] = eventOf(fact, mark);
        break;
      case 'fitted':
        this.#fitted(fact, mark);
        break;
      case 'taken off':
        this.#parts[fact.part] = { ...this.#frozen(fact.part), off: mark };
        break;
      case 'moved': {
        const { serial: _, ...rest } = this.#frozen(fact.part);
        this.#parts[fact.part] = { ...rest, off: mark };
        break;
      }
      case 'ran':
        this.#runs.push(runOf(fact, mark));
        this.#hit(fact, mark);
        if (fact.meterHours !== undefined) this.#latest = { ...this.#latest, meterHours: fact.meterHours };
        break;
      case 'checked':
        this.#checked(fact, mark);
        break;
      case 'made':
        this.#made(fact, mark);
        break;
      case 'loosened':
        this.#joints[fact.joint] = { ...this.#joints[fact.joint], loosened: mark };
        break;
      case 'set':
        this.#item(fact.item, { set: withReading(mark, fact.reading) });
        this.#read(fact.item, mark, fact.reading);
        break;
      case 'found':
        this.#defectOf.set(fact.id, this.#defects.push(defectOf(fact, mark)) - 1);
        break;
      case 'failed':
        this.#failed(fact, mark);
        break;
      case 'look asked':
        for (const item of fact.items)
          this.#item(item, { asked: { ...mark, why: fact.why, ...(fact.second ? { second: fact.second } : {}) } });
        break;
      case 'mended': {
        const place = this.#defectOf.get(fact.found);
        const defect = place === undefined ? undefined : this.#defects[place];
        if (place !== undefined && defect) this.#defects[place] = { ...defect, mended: { ...mark, how: fact.how } };
        break;
      }
      case 'put on':
        this.#latest = { ...this.#latest, posture: fact.posture };
        break;
      case 'set-up':
        for (const [name, value] of Object.entries(fact.changes)) this.#settings[name] = { ...mark, value };
        break;
      case 'tyres':
        this.#latest = { ...this.#latest, tyres: { ...mark, set: fact.set } };
        break;
      case 'released':
        this.#releases.push(releaseOf(fact, mark));
        break;
      case 'life expected':
        this.#expected[fact.of] = expectedOf(fact, mark);
        break;
      // The rest changes nothing here: what was read at the track (SPEC B25), laps (B28) and spares counted (B33) is for those who read the facts.
    }
  }

  get #clock(): Age {
    return { minutes: this.#minutes, laps: this.#laps };
  }

  #fitted(fact: FactOf<'fitted'>, mark: Mark): void {
    const before = this.#parts[fact.part];
    if (fact.fresh) this.#replaced(fact.part, mark);
    const age = fact.fresh ? { minutes: 0, laps: 0 } : ageAt(before, this.#clock);
    const { serial: old, freshFrom, ...rest } = before ?? {};
    const from = fact.fresh ? before?.off : freshFrom;
    const serial = fact.serial ?? (fact.fresh ? undefined : old);
    this.#parts[fact.part] = {
      ...rest,
      ...(fact.fresh ? { fresh: mark } : {}),
      ...(from ? { freshFrom: from } : {}),
      ...(serial === undefined ? {} : { serial }),
      on: true,
      back: mark,
      ageMinutes: fact.carriedMinutes ?? age.minutes,
      ageLaps: fact.carriedLaps ?? age.laps,
      sinceMinutes: this.#minutes,
      sinceLaps: this.#laps,
    };
  }

  /** A joint that let go is open; a part that failed has a defect. */
  #failed(fact: FactOf<'failed'>, mark: Mark): void {
    this.#hit(fact, mark);
    if (fact.joint !== undefined) this.#joints[fact.joint] = { ...this.#joints[fact.joint], loosened: mark };
    else this.#defectOf.set(fact.id, this.#defects.push(failureOf(fact, mark)) - 1);
  }

  #hit({ impact }: FactOf<'ran' | 'failed'>, mark: Mark): void {
    if (impact) this.#impacts.push({ ...mark, ...impact });
  }

  /** Another one is in its place: what had failed is gone. */
  #replaced(part: string, mark: Mark): void {
    for (const [place, one] of this.#defects.entries())
      if (one.failed && one.part === part && !one.mended)
        this.#defects[place] = { ...one, mended: { ...mark, how: 'another one fitted' } };
  }

  /** The part off, its age as it is now. */
  #frozen(part: string): PartState {
    const age = ageAt(this.#parts[part], this.#clock);
    return {
      ...this.#parts[part],
      on: false,
      ageMinutes: age.minutes,
      ageLaps: age.laps,
      sinceMinutes: this.#minutes,
      sinceLaps: this.#laps,
    };
  }

  #checked(fact: FactOf<'checked'>, mark: Mark): void {
    if (fact.result === 'fail') this.#item(fact.item, { fail: said(fact, mark) });
    else if (fact.result === 'not possible') this.#item(fact.item, { notPossible: said(fact, mark) });
    else if (fact.secondLook) this.#secondLook(fact.item, mark);
    else this.#item(fact.item, { pass: withReading(mark, fact.reading) });
    this.#read(fact.item, mark, fact.reading);
  }

  #made(fact: FactOf<'made'>, mark: Mark): void {
    const pass = withReading(mark, fact.reading);
    if (!fact.secondLook) this.#joints[fact.joint] = { ...this.#joints[fact.joint], made: pass };
    // A joint without its second retention is closed, but its check is not passed (SPEC B17).
    if (fact.second === 'not fitted') {
      this.#item(fact.joint, { fail: said({ ...fact, why: fact.why ?? 'second retention not fitted' }, mark) });
    } else if (fact.secondLook) this.#secondLook(fact.joint, mark);
    else this.#item(fact.joint, { pass });
    this.#read(fact.joint, mark, fact.reading);
  }

  /** Confirms the pass that stands; without one there is nothing to confirm. */
  #secondLook(item: string, mark: Mark): void {
    const pass = this.#items[item]?.pass;
    if (pass) this.#item(item, { pass: { ...pass, secondLook: mark } });
    const joint = this.#joints[item];
    if (joint?.made) this.#joints[item] = { ...joint, made: { ...joint.made, secondLook: mark } };
  }

  #item(item: string, change: Partial<ItemState>): void {
    this.#items[item] = { ...(this.#items[item] ?? { readings: [] }), ...change };
  }

  #read(item: string, mark: Mark, reading: Reading | undefined): void {
    if (reading === undefined) return;
    const kept = (this.#items[item]?.readings ?? []).slice(1 - READINGS_KEPT);
    kept.push({ ...mark, reading });
    this.#item(item, { readings: kept });
  }
}

function latestOf({
  meterHours,
  posture,
  tyres,
  filed,
}: State): Pick<State, 'meterHours' | 'posture' | 'tyres' | 'filed'> {
  return {
    ...(meterHours === undefined ? {} : { meterHours }),
    ...(posture === undefined ? {} : { posture }),
    ...(tyres === undefined ? {} : { tyres }),
    ...(filed === undefined ? {} : { filed }),
  };
}

function withReading(mark: Mark, reading: Reading | undefined): Pass {
  return reading === undefined ? mark : { ...mark, reading };
}

function said(fact: { why?: string | undefined; reading?: Reading | undefined }, mark: Mark): Said {
  return { ...withReading(mark, fact.reading), why: fact.why ?? 'not said' };
}

function runOf(fact: FactOf<'ran'>, mark: Mark): Run {
  return {
    ...mark,
    event: fact.event ?? fact.at.slice(0, 10),
    runMinutes: fact.minutes,
    runLaps: fact.laps ?? 0,
    wet: fact.wet ?? false,
  };
}

function defectOf(fact: FactOf<'found'>, mark: Mark): Defect {
  return {
    ...mark,
    part: fact.part,
    ...(fact.item === undefined ? {} : { item: fact.item }),
    defect: fact.defect,
    grade: fact.grade,
    ...(fact.photo === undefined ? {} : { photo: fact.photo }),
  };
}

function failureOf({ part, how, photo }: FactOf<'failed'>, mark: Mark): Defect {
  return { ...mark, part, defect: how, grade: 'safety', failed: true, ...(photo === undefined ? {} : { photo }) };
}

function eventOf(fact: FactOf<'event'>, mark: Mark): KartEvent {
  return {
    ...mark,
    event: fact.event,
    from: fact.from,
    until: fact.until ?? endOfDay(fact.from),
    ...(fact.track === undefined ? {} : { track: fact.track }),
    runMinutes: fact.minutes,
    runLaps: fact.laps ?? 0,
    wet: fact.wet ?? false,
  };
}

/** The end of the UTC day, or the end of a race day where that crosses midnight UTC. */
function endOfDay(from: string): string {
  const midnight = `${from.slice(0, 10)}T23:59:59.999Z`;
  const raceDay = new Date(Date.parse(from) + RACE_DAY_MS).toISOString();
  return raceDay > midnight ? raceDay : midnight;
}

function expectedOf({ halfHours, tenthHours, interval = false, why }: FactOf<'life expected'>, mark: Mark): Expected {
  return {
    ...mark,
    ...(halfHours === undefined ? {} : { halfHours }),
    ...(tenthHours === undefined ? {} : { tenthHours }),
    interval,
    ...(why === undefined ? {} : { why }),
  };
}

function releaseOf(fact: FactOf<'released'>, mark: Mark): Release {
  return {
    ...mark,
    ...(fact.event === undefined ? {} : { event: fact.event }),
    signer: fact.signer,
    verdict: fact.verdict,
    open: fact.open,
    statement: fact.statement,
  };
}

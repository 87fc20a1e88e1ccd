/**
 * Is the kart fit to run? What the record holds against it, and what the record does not know. A person signs; this
 * only lists. `fit` means no more than: nothing in the record stands against running.
 * It must not import prep or laps: the wish to be on time or fast cannot reach this.
 */
import type { KartEvent, State } from '../book/index.ts';
import { GRADES, type Grade, type Kart } from '../kart/index.ts';
import { type Horizon, openedBy, standings } from '../life/index.ts';

export type Reason = {
  readonly what: 'part off' | 'joint open' | 'defect' | 'item';
  readonly on: string; // part, joint or item id
  readonly grade: Grade;
  readonly text: string;
  readonly facts: readonly string[];
};

export type Fitness = {
  readonly kart: string;
  readonly verdict: 'fit' | 'not fit' | 'not known';
  readonly against: readonly Reason[]; // each of these alone makes it not fit
  readonly unknown: readonly Reason[]; // each of these alone makes it not known
  readonly open: readonly Reason[]; // due, but below safety: listed on the release, no bar to running
};

/** @param event the event it would run at; what lapses during that counts. Without one: as it stands now. */
export const fitness = (
  kart: Kart,
  state: State,
  at: { readonly now: string; readonly event?: KartEvent },
): Fitness => {
  const against: Reason[] = [];
  const unknown: Reason[] = [];
  const open: Reason[] = [];

  for (const part of Object.values(kart.parts)) {
    const off = state.parts[part.id]?.on === false ? state.parts[part.id]?.off : undefined;
    if (off)
      against.push({
        what: 'part off',
        on: part.id,
        grade: 'safety',
        text: `${part.id} is off the kart.`,
        facts: [off.fact],
      });
  }
  for (const joint of Object.values(kart.joints)) {
    const opened = openedBy(kart, state, joint.id);
    if (opened)
      against.push({
        what: 'joint open',
        on: joint.id,
        grade: 'safety',
        text: `${joint.part}: ${joint.name} opened and not made since.`,
        facts: [opened.fact],
      });
  }
  for (const d of state.defects) {
    if (d.mended) continue;
    const reason: Reason = {
      what: 'defect',
      on: d.item ?? d.part,
      grade: d.grade,
      text: `${d.part}: ${d.defect}`,
      facts: [d.fact],
    };
    (d.grade === 'safety' ? against : open).push(reason);
  }
  for (const s of standings(kart, state, horizonOf(at))) {
    if (s.holds || s.cause === 'joint open') continue;
    const reason: Reason = {
      what: 'item',
      on: s.item.id,
      grade: s.item.grade,
      text: `${s.item.title} (${s.item.part}): ${s.why}`,
      facts: s.facts,
    };
    if (s.item.grade !== 'safety') open.push(reason);
    else if (s.cause === 'never' || s.cause === 'not possible') unknown.push(reason);
    else against.push(reason);
  }
  open.sort((a, b) => GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade));
  const verdict = against.length > 0 ? 'not fit' : unknown.length > 0 ? 'not known' : 'fit';
  return { kart: kart.name, verdict, against, unknown, open };
};

const horizonOf = (at: { readonly now: string; readonly event?: KartEvent }): Horizon =>
  at.event
    ? {
        now: at.now,
        event: at.event.event,
        minutes: at.event.runMinutes,
        laps: at.event.runLaps,
        until: at.event.until,
      }
    : { now: at.now };

/** Everything the search can find, with the page it leads to. */
import { subjects } from '../../numbers/index.ts';
import { sessionHash } from '../laps/session-page.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { actionOf, dateOf, factWords, titleOf } from '../words/reads.ts';
import { searchWords } from '../words/search.ts';
import type { Thing } from './find.ts';

const PAGES: readonly (readonly [title: string, under: string, hash: string])[] = [
  [searchWords.today, searchWords.whatIsDueAndWhy, hashOf({ sheet: 'today' })],
  [searchWords.work, searchWords.planStepAtTimeWork, hashOf({ sheet: 'work' })],
  [searchWords.kart, searchWords.fromAboveWhatStands, hashOf({ sheet: 'kart' })],
  [searchWords.track, searchWords.airJetPressuresFuel, hashOf({ sheet: 'track' })],
  [searchWords.record, searchWords.everyEntryWriteDownRun, hashOf({ sheet: 'record' })],
  [searchWords.fit, searchWords.whatStandsAgainst, hashOf({ sheet: 'fit' })],
  [searchWords.numbers, searchWords.toWhichDimensionTorque, hashOf({ sheet: 'numbers' })],
  [searchWords.setUp, searchWords.howItStandsWhatWas, hashOf({ sheet: 'setup' })],
  [searchWords.laps, searchWords.whatItDidAndDid, hashOf({ sheet: 'laps' })],
  [searchWords.weakLinks, searchWords.whatWouldHurtUsSecond, hashOf({ sheet: 'weak' })],
  [searchWords.howLongPartsLast, 'lives', hashOf({ sheet: 'lives' })],
  [searchWords.sparesBox, searchWords.whatToCarry, hashOf({ sheet: 'spares' })],
  [searchWords.labels, searchWords.withCodeForParts, hashOf({ sheet: 'labels' })],
];

export function thingsOf({ kart, state, plan, facts }: Snapshot): readonly Thing[] {
  const partHash = (part: string): string => hashOf({ sheet: 'part', about: `${kart.name}/${part}` });
  const stepOf = new Map(plan.steps.filter(s => s.state !== 'done').map(s => [s.item, s]));
  return [
    ...PAGES.map(([title, under, hash]): Thing => ({ sort: 'page', title, under, hash })),
    ...plan.steps
      .filter(step => step.state !== 'done')
      .map(
        (step): Thing => ({
          sort: 'step',
          title: `${actionOf(step)}: ${titleOf(step)}`,
          under: `${step.n}, ${step.part ?? 'kart'}`,
          hash: hashOf({ sheet: 'work', step: step.key }),
        }),
      ),
    ...Object.values(kart.parts).map(
      (part): Thing => ({
        sort: 'part',
        title: part.id,
        under: `${part.kind}, ${part.system}`,
        hash: partHash(part.id),
      }),
    ),
    ...Object.values(kart.joints).map(
      (joint): Thing => ({
        sort: 'joint',
        title: joint.name,
        under: `${joint.part}, ${joint.kind}${joint.thread === undefined ? '' : ` ${joint.thread}`}`,
        hash: partHash(joint.part),
      }),
    ),
    ...Object.values(kart.items)
      .filter(item => item.joint === undefined)
      .map((item): Thing => {
        const step = stepOf.get(item.id);
        return {
          sort: 'check',
          title: item.title,
          under: step === undefined ? item.part : `${item.part}, due`,
          hash: step === undefined ? partHash(item.part) : hashOf({ sheet: 'work', step: step.key }),
        };
      }),
    ...subjects.map(
      (one): Thing => ({
        sort: 'number',
        title: one.title,
        under: one.name,
        hash: hashOf({ sheet: 'numbers', number: one.name }),
      }),
    ),
    ...Object.values(state.events).map(
      (event): Thing => ({
        sort: 'event',
        title: event.event,
        under: [dateOf(event.from), event.track].filter(Boolean).join(', '),
        hash: hashOf({ sheet: 'record' }),
      }),
    ),
    ...facts.flatMap(({ fact, struck }): readonly Thing[] => {
      if (struck !== null || fact.kind === 'kart filed' || fact.kind === 'event') return [];
      const under = `${dateOf(fact.at)}, ${fact.by}`;
      if (fact.kind === 'ran') return [{ sort: 'session', title: factWords(fact), under, hash: sessionHash(fact.id) }];
      const part = 'part' in fact ? fact.part : undefined;
      const hash = part !== undefined && kart.parts[part] ? partHash(part) : hashOf({ sheet: 'record' });
      return [{ sort: 'entry', title: factWords(fact), under, hash }];
    }),
  ];
}

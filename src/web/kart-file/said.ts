/** What a change of the kart file does, in sentences: what can hurt first. */
import type { KartChange } from '../../app/index.ts';
import { kartFileWords } from '../words/kart-file.ts';

export type ChangeSaid = { readonly grave: readonly string[]; readonly lines: readonly string[] };

export function changeSaid(change: KartChange): ChangeSaid {
  const { parts, items, functions, seconds, dimensions, verdict } = change;
  const safety = parts.gone.filter(one => one.safety);
  const other = parts.gone.filter(one => !one.safety).map(({ part }) => part);
  const joint = (id: string): string => id.replace('/', ', ');
  const lost = seconds.flatMap(one =>
    one.before !== null && one.after === null ? [[one.joint, one.before] as const] : [],
  );
  const got = seconds.flatMap(one => (one.after === null ? [] : [[one.joint, one.after] as const]));
  const grave = [
    ...safety.map(({ part, carried }) => kartFileWords.safetyGone(part, carried)),
    ...functions.map(({ name, hazard, is, without }) =>
      is === 'gone' ? kartFileWords.functionGone(name, hazard) : kartFileWords.functionLess(name, without),
    ),
    ...lost.map(([id, second]) => kartFileWords.secondGoes(joint(id), second)),
  ];
  const looks = kartFileWords.looks(
    items.added.length,
    items.gone.length,
    items.gone.filter(({ grade }) => grade === 'safety').length,
  );
  const lines = [
    ...(other.length > 0 ? [kartFileWords.partsGone(other)] : []),
    ...(parts.added.length > 0 ? [kartFileWords.partsAdded(parts.added)] : []),
    ...(looks === '' ? [] : [looks]),
    ...got.map(([id, second]) => kartFileWords.secondComes(joint(id), second)),
    ...dimensions.map(({ name, before, after }) => kartFileWords.dimension(name, before, after)),
  ];
  const plain = grave.length + lines.length === 0;
  return {
    grave,
    lines: [
      ...lines,
      ...(plain ? [change.isOther ? kartFileWords.otherFigures : kartFileWords.sameKart] : []),
      kartFileWords.fitness(verdict.before, verdict.after),
      ...(rank(verdict.after) < rank(verdict.before) ? [kartFileWords.byFileAlone] : []),
    ],
  };
}

const rank = (verdict: KartChange['verdict']['before']): number => ['fit', 'not known', 'not fit'].indexOf(verdict);

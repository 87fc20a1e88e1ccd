/**
 * What is guessed of a kind before its record is looked at: its shape from the list, its life from a person. What was
 * written down in the book goes before what the kart file says, as a whole.
 */
import type { Expected, State } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { type Gone, INTERVAL_SHARE, type Prior, priorOfAnswers, withAnswer } from '../posterior/index.ts';
import { type Priors, priorOfKind } from './priors.ts';

/** A spread for kinds in no list of shapes: any class of failure. Common practice. */
const ANY_SHAPE = 0.5;

/** @param state undefined: nothing of the book is looked at */
export function guessOf(
  kart: Kart,
  state: Pick<State, 'expected'> | undefined,
  kind: string,
  priors: Priors,
): Prior | undefined {
  const listed = priorOfKind(priors, kind);
  const said = state?.expected[kind] ? ofBook(state.expected[kind]) : ofFile(kart, kind);
  if (said === undefined) return listed;
  const { tenth, half, source } = said;
  if (tenth && half) return priorOfAnswers(tenth, half, listed?.shape.spread ?? ANY_SHAPE, source);
  if (listed === undefined) return undefined; // one answer says no shape
  const one = tenth ?? half;
  return one ? withAnswer(listed, one, source) : listed;
}

type Said = { readonly tenth: Gone | undefined; readonly half: Gone | undefined; readonly source: string };

const tenthBy = (hours: number | undefined): Gone | undefined =>
  hours === undefined ? undefined : { share: INTERVAL_SHARE, by: hours };
const halfBy = (hours: number | undefined): Gone | undefined =>
  hours === undefined ? undefined : { share: 0.5, by: hours };

function ofBook({ tenthHours, halfHours, interval, by, at, why }: Expected): Said {
  const answers = [
    ...(halfHours === undefined ? [] : [`half gone by ${halfHours} h`]),
    ...(tenthHours === undefined
      ? []
      : [
          interval
            ? `the maker's service interval of ${tenthHours} h, read as 1 in 10 gone by then (common practice)`
            : `1 in 10 gone by ${tenthHours} h`,
        ]),
  ];
  const source = `${answers.join(', ')}, said by ${by} on ${at.slice(0, 10)}${why === undefined ? '' : `: ${why}`}`;
  return { tenth: tenthBy(tenthHours), half: halfBy(halfHours), source };
}

function ofFile({ lives }: Kart, kind: string): Said | undefined {
  const said = lives?.[kind];
  if (said === undefined) return undefined;
  const hours = (of: { readonly si: number } | undefined): number | undefined => of && of.si / 3600;
  return {
    tenth: tenthBy(hours(said.tenthGoneBy)),
    half: halfBy(hours(said.halfGoneBy)),
    source: said.source,
  };
}

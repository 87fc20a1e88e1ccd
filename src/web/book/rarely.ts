/** What is asked a few times a season; it waits in its own chunk. */
import {
  type AlikeAnswer,
  askForLooks,
  type LooksWanted,
  type PlainApp,
  type Recorded,
  type SecondWanted,
  wantSecond,
  whatElse,
} from '../../app/index.ts';
import type { Gathered } from '../slow-questions/ask.ts';
import { fetchShipped } from '../weak/texts.ts';

export const alike = async (app: PlainApp, kart: string, fact: string): Promise<AlikeAnswer> =>
  whatElse(app, kart, { fact }, await fetchShipped());

export const looks = async (app: PlainApp, kart: string, wanted: LooksWanted): Promise<Recorded> =>
  askForLooks(app, kart, wanted, await fetchShipped());

export const second = async (app: PlainApp, kart: string, wanted: SecondWanted): Promise<Recorded> =>
  wantSecond(app, kart, wanted, await fetchShipped());

/** The whole book, with the text of each kart's file in force. */
export async function gathered(app: PlainApp): Promise<Gathered> {
  const books = await Promise.all(
    (await app.karts()).map(async ({ name }) => ({
      facts: (await app.facts(name)).map(({ fact }) => fact),
      kart: await app.kart(name),
      filed: (await app.state(name)).filed?.fact,
    })),
  );
  const all = books.flatMap(each => each.facts);
  const textOf = (id: string | undefined): string => {
    const filed = all.find(fact => fact.id === id);
    return filed?.kind === 'kart filed' ? filed.text : '';
  };
  return {
    facts: all,
    karts: books.map(({ kart, filed }) => ({ kart, text: textOf(filed) })),
    now: new Date().toISOString(),
  };
}

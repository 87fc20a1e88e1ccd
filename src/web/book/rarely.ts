/** What is asked a few times a season; it waits in its own chunk. */
import {
  type AlikeAnswer,
  askForLooks,
  calendarOf,
  type LooksWanted,
  type PlainApp,
  type Recorded,
  type SecondWanted,
  wantSecond,
  whatElse,
} from '../../app/index.ts';
import { fetchShipped } from '../weak/texts.ts';

export const alike = async (app: PlainApp, kart: string, fact: string): Promise<AlikeAnswer> =>
  whatElse(app, kart, { fact }, await fetchShipped());

export const looks = async (app: PlainApp, kart: string, wanted: LooksWanted): Promise<Recorded> =>
  askForLooks(app, kart, wanted, await fetchShipped());

export const second = async (app: PlainApp, kart: string, wanted: SecondWanted): Promise<Recorded> =>
  wantSecond(app, kart, wanted, await fetchShipped());

export const calendar = (app: PlainApp, kart: string): Promise<string> => calendarOf(app, kart);

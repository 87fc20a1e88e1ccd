/** Laps from and to the server: a log goes as it is, and its refusals come back as values. */
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { httpServer } from '../server.ts';

export type Answered<T> =
  | { readonly kind: 'answered'; readonly value: T }
  /** `asksAgain`: the same once more, and sure, is recorded as it was said. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly asksAgain: boolean };

export async function asked<T>(url: string, init?: RequestInit): Promise<Answered<T>> {
  try {
    const response = await fetch(url, init);
    if (response.ok) return { kind: 'answered', value: (await response.json()) as T };
    const body = (await response.json().catch(() => ({}))) as { problems?: Problem[]; asksAgain?: boolean };
    return {
      kind: 'refused',
      problems: body.problems ?? [unclear(response)],
      asksAgain: body.asksAgain === true,
    };
  } catch (error) {
    return { kind: 'refused', problems: httpServer.problems(error), asksAgain: false };
  }
}

const unclear = ({ status, statusText, url }: Response): Problem => ({
  code: 'book',
  where: url,
  message: `The server answered ${status} ${statusText}.`,
  remedy: 'Nothing was recorded. Look at the terminal it runs in, and try again.',
});

/** `gate` and the like may stand several times; what is not said is left out. */
export function urlOf(kart: string, path: string, said: Readonly<Record<string, Said>> = {}): string {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(said))
    for (const each of typeof value === 'object' ? value : [value])
      if (each !== undefined && each !== '') query.append(key, String(each));
  const text = query.toString();
  return `/api/karts/${encodeURIComponent(kart)}/${path}${text === '' ? '' : `?${text}`}`;
}
type Said = string | number | boolean | undefined | readonly (string | number)[];

/** What was written, with what a person should know of it. */
export type LapsWritten = { readonly facts: readonly Fact[]; readonly say: readonly string[] };

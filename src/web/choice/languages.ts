/**
 * How dates and the time of day read in the languages most phones here speak, so that a first sheet does not wait for the browser's
 * formatter, whose first answer takes as long as drawing a page. As the Unicode Common Locale Data Repository has them: a test holds
 * every one against `Intl.DateTimeFormat`, and any other language is asked there.
 */
import type { Choice } from './choice.ts';

export type FirstChoice = Pick<Choice, 'date' | 'clock'>;

const LINES: readonly (readonly [FirstChoice['date'], FirstChoice['clock'], readonly string[]])[] = [
  ['month first', '12 h', ['en', 'en-US']],
  ['named', '12 h', ['en-AU', 'en-NZ', 'en-IN', 'es-MX', 'es-AR', 'es-US', 'es-419']],
  ['named', '24 h', ['en-GB', 'en-IE', 'de', 'de-DE', 'de-AT', 'de-CH', 'fr', 'fr-FR', 'fr-BE', 'fr-CH']],
  ['named', '24 h', ['it', 'it-IT', 'it-CH', 'es', 'es-ES', 'pt', 'pt-PT', 'pt-BR', 'nl', 'nl-NL', 'nl-BE']],
  ['named', '24 h', ['da', 'da-DK', 'nb', 'nb-NO', 'fi', 'fi-FI', 'pl', 'pl-PL', 'cs', 'cs-CZ']],
  ['year first', '24 h', ['sv', 'sv-SE', 'hu', 'hu-HU', 'ja', 'ja-JP']],
];

export const KNOWN_LANGUAGES: ReadonlyMap<string, FirstChoice> = new Map(
  LINES.flatMap(([date, clock, languages]) => languages.map(language => [language, { date, clock }] as const)),
);

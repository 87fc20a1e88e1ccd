/** How a number is worked out, and from which sources. */
import { BIBLIOGRAPHY, type Subject } from '../../numbers/index.ts';
import { heading, wrap } from './wrap.ts';

/** The card with its sources in full, as JSON tells it. */
export const cardOf = ({ title, card }: Subject) => ({
  title,
  ...card,
  sources: card.sources.map(key => ({ key, ...BIBLIOGRAPHY[key] })),
});

export function cardText(subject: Subject): string {
  const { title, what, equation, symbols, validity, sources } = cardOf(subject);
  return (
    wrap(`${title}. ${what}`) +
    heading('equation') +
    wrap(equation, '  ') +
    heading('symbols') +
    Object.entries(symbols)
      .map(([symbol, meaning]) => wrap(meaning, `  ${symbol.padEnd(6)} `))
      .join('') +
    heading('validity') +
    wrap(validity, '  ') +
    heading('sources') +
    sources.map(source => wrap(Object.values(source).map(String).join('; '), '  - ')).join('')
  );
}

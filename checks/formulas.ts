/** docs/formulas.md: formula, sources, rows, agreement, from the cards, the bibliography and the rows themselves. */
import { BIBLIOGRAPHY, type Subject } from '../src/numbers/index.ts';
import type { Row } from './rows.ts';
import { MARKS } from './tally.ts';

const HEAD = `# Formulas, their sources and how they agree

Made from the cards beside the formulas and the rows in \`checks/\`; do not edit. Every row runs in \`npm test\` and agrees within its own
tolerance, with the known differences named here. A row is marked by how its value was obtained: read (printed, seen), computed
(worked out by other means than ours), memory (recalled, not seen again), common practice (a figure of the trade without a source).
`;

export const formulas = (subjects: readonly Subject[], rows: readonly Row[]): string =>
  [HEAD, overview(subjects, rows), ...subjects.map(subject => section(subject, of(subject, rows)))].join('\n');

const of = (subject: Subject, rows: readonly Row[]): readonly Row[] => rows.filter(row => row.subject === subject.name);

const overview = (subjects: readonly Subject[], rows: readonly Row[]): string => {
  const line = (subject: Subject): string => {
    const own = of(subject, rows);
    const counts = MARKS.map(mark => own.filter(row => row.mark === mark).length);
    const known = own.filter(row => row.knownDifference !== undefined).length;
    return `| [${subject.name}](#${subject.name}) | ${subject.card.sources.length} | ${own.length} | ${counts.join(' | ')} | ${known === 0 ? 'all rows' : `all but ${known}`} |`;
  };
  return [
    `| subject | sources | rows | ${MARKS.join(' | ')} | agrees |`,
    `| --- | --- | --- | ${MARKS.map(() => '---').join(' | ')} | --- |`,
    ...subjects.map(line),
    '',
  ].join('\n');
};

const section = ({ name, title, card }: Subject, rows: readonly Row[]): string => {
  const known = rows.filter(row => row.knownDifference !== undefined);
  return [
    `## ${name}`,
    '',
    `${title}. ${card.what}`,
    '',
    `- Equation: \`${card.equation}\``,
    `- Valid: ${card.validity}`,
    `- Rows: ${rows.map(row => row.id).join(', ')}`,
    ...card.sources.map(key => `- Source: ${BIBLIOGRAPHY[key].title}`),
    ...known.map(row => `- Known difference, ${row.id}: ${row.knownDifference}`),
    '',
  ].join('\n');
};

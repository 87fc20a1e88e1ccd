import { type Library, readLibrary } from './library.ts';
import { type Problem, problem } from './problem.ts';
import { child, top } from './source.ts';
import { didYouMean } from './suggest.ts';

export type NewKartFile =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * The text of a new kart file over a template: it reads without an error as it stands, with every dimension of the
 * template to be measured. `schema` is where the editor finds the JSON Schema, seen from the file.
 */
export function newKartFile(
  template: string,
  name: string,
  library: Library,
  schema = 'kart.schema.json',
): NewKartFile {
  const { templates } = readLibrary(library);
  const found = templates.get(template);
  if (found === undefined)
    return {
      ok: false,
      problems: [
        problem(
          { ...top(undefined), path: ['template'] },
          {
            expected: 'a template that is known',
            got: `"${template}"`,
            remedy: didYouMean(template, templates.keys(), 'name one of the templates'),
          },
        ),
      ],
    };
  const dimensions = Object.entries(found.value.dimensions ?? {});
  const rules = child(found.value, 'rules');
  const width = Math.max(0, ...dimensions.map(([key, value]) => entry(key, value).length));
  const lines = [
    `# yaml-language-server: $schema=${schema}`,
    '# What this kart is. It lies over its template: what stands here wins, everything else comes from the template.',
    "# The maker's manual, the class rules and local law win over any figure of the template.",
    'kart: 1',
    `name: ${quoted(name)}`,
    `template: ${quoted(template)}`,
    typeof rules === 'string' ? `rules: ${quoted(rules)}` : '# rules: the id of the rule set it is raced under',
    '',
    "# The template's figures. Measure your own kart and write yours, each with its unit: 1045 mm, 41 1/8 in, 20 N·m.",
    ...(dimensions.length === 0
      ? ['dimensions: {}']
      : ['dimensions:', ...dimensions.map(([key, value]) => `  ${entry(key, value).padEnd(width)}  # measure yours`)]),
    '',
    '# Parts that differ from the template: name the part, and only what differs. "none" takes a part, joint or item away.',
    '# A torque of your own names its source: the manual and the page.',
    '# parts:',
    '#   NAME OF A PART:',
    '#     joints: { NAME OF A JOINT: { torque: 18..22 N·m, source: "manual, page" } }',
    '#     items: { NAME OF AN ITEM: { minutes: 3 } }',
    '#   NAME OF ANOTHER PART: none',
    '',
  ];
  return { ok: true, text: lines.join('\n') };
}

const entry = (key: string, value: string): string => `${quoted(key)}: ${quoted(value)}`;

/** Plain where YAML reads it back as the same text, else in double quotes, which JSON's are too. */
const quoted = (text: string): string =>
  (/^[A-Za-z][A-Za-z0-9 ,/·°-]*[A-Za-z0-9]$/.test(text) && !/^(?:true|false|null|yes|no|on|off|none)$/i.test(text)) ||
  /^\d[\d. /]* [A-Za-z°·/%]+$/.test(text)
    ? text
    : JSON.stringify(text);

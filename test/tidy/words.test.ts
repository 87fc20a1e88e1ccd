/**
 * What the page says stands in src/web/words and nowhere else, so that it can be read through, corrected and said in another language.
 * Looked for in the syntax tree: text between tags, attributes that are read, and whatever else reads like a sentence.
 */
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { code, readText } from './files.ts';

const pages = code.filter(path => /^src\/web\/(?!words\/).*(?<!\.test)\.tsx?$/.test(path));

/** Attributes that a person reads or hears. */
const READ = new Set(['aria-label', 'aria-description', 'title', 'placeholder', 'label', 'alt', 'summary']);
/** Attributes that only the browser, a style sheet or a drawing reads. */
const UNREAD = /^(class|id|href|d|for|style|transform|points|viewBox|aria-(labelledby|describedby|controls)|accept)$/;
/** Calls whose argument names something: an element, an event, a figure of the numbers, a field of the question. */
const NAMES_IT =
  /(^|\.)(querySelector(All)?|matches|getElementById|addEventListener|removeEventListener|matchMedia|get|set|wordsOf|figureOf|askedSize|saidText|useKept)$/;

const letters = (text: string): boolean => /\p{L}{2}/u.test(text);
/** It begins like a sentence, or says two words. */
const sentenceLike = (text: string): boolean =>
  /^\P{L}*\p{Lu}\p{Ll}/u.test(text) || /\p{L}{2,}[,;:.]? \p{L}{2,}/u.test(text);

/** What no person reads. Each with its reason; nothing else may be put here than a name that the program itself goes by. */
const NO_TEXT: readonly (readonly [file: RegExp, text: RegExp])[] = [
  [
    /\/numbers\/plates\//,
    /^(cold|air in tyre|similar runs) NAME|^(speed|overall ratio) in gear 1$|^(left|cross) share$/,
  ], // figures by name
  [/\/numbers\/plates\//, /^(front|rear) locks at$|^braking force |^(exhaust|transfer) (opens|closes|duration)/], // figures by name
  [/\/numbers\/plates\/retention/, /^-locking compound$/], // of a name of the core
  [/\/numbers\/answered/, /^Reject$/], // how a note of the core begins
  [
    /\/(labels|setup|track|type-in)\//,
    /^(labels (address|of)|setup against 1|track (side|\w+ 1)|(printed lists|typed list) 1)$/,
  ], // kept on the device
  [/\/laps\//, /^(laps by hand|log columns|helped day 1)$/], // kept on the device
  [/\/kept/, /^1 in the book$/], // kept on the device
  [/\/views\/(answers|write-down|writing|picture)/, /^(read in 1|failed last|writing down|picture of the plan)$/], // kept on the device
  [/\/drawing\/geometry/, /^(overall front width|(1 )?tyre (width|diameter))$/], // dimensions of a kart file
  [/\/drawing\/kart-drawing/, /^tyre off$/], // how it is drawn: names for the style sheet
  [
    /\/dimensioned\/(front-end|rear-axle|which)/,
    /^(overall )?(front|rear|ride|hub|tyre|stub|axle|brake|chain) (front |ride |tyre )?(bearing|disc|end|front|height( front)?|left|length 1|line|outboard 1|right|spacers( 1)?|width)$/,
  ], // dimensions, parts and readings of a kart file, figures by name
  [/\/search\/slash/, /^input, /], // elements
  [/\/(sw|versions)\.ts$/, /^take over$/], // what the page tells its service worker
  [/\/views\/cannot/, /^(cannot be done|put off)$/], // answers, by name
];

/** Names that the core gave: kinds of facts, states, figures. The page passes them on. */
const namesOfTheCore = new Set(
  code
    .filter(path => /^src\/(?!web|cli|server).*(?<!\.test)\.ts$/.test(path))
    .flatMap(path => [...readText(path).matchAll(/'([^'\n]+)'/g)].map(([, name = '']) => name)),
);

/** And those that the page gave to its own states: members of a type are names, whatever they say. */
const namesOfThePage = new Set(
  pages.flatMap(path => {
    const names: string[] = [];
    const visit = (node: ts.Node): void => {
      if (ts.isLiteralTypeNode(node) && ts.isStringLiteral(node.literal)) names.push(node.literal.text);
      if (ts.isAsExpression(node) && ts.isArrayLiteralExpression(node.expression))
        names.push(...node.expression.elements.filter(ts.isStringLiteral).map(({ text }) => text)); // a type by its members
      ts.forEachChild(node, visit);
    };
    visit(parsed(path, readText(path)));
    return names;
  }),
);

function parsed(path: string, source: string): ts.SourceFile {
  const kind = path.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true, kind);
}

type Text = { readonly path: string; readonly line: number; readonly text: string };

function textsOf(path: string, source: string): readonly Text[] {
  const file = parsed(path, source);
  const found: Text[] = [];
  const take = (node: ts.Node, text: string): void => {
    if (NO_TEXT.some(([where, what]) => where.test(path) && what.test(text))) return;
    found.push({ path, line: file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1, text: text.trim() });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    if (ts.isThrowStatement(node)) return; // a caller's bug: said to who writes the program
    if (ts.isJsxText(node)) {
      if (letters(node.text)) take(node, node.text);
      return;
    }
    if (ts.isJsxAttribute(node)) {
      const name = node.name.getText(file);
      const { initializer } = node;
      if (UNREAD.test(name)) return;
      if (initializer !== undefined && READ.has(name) && ts.isStringLiteral(initializer)) {
        if (letters(initializer.text)) take(initializer, initializer.text);
        return;
      }
    }
    if (ts.isStringLiteralLike(node) && sentenceLike(node.text) && !isName(node, file)) take(node, node.text);
    if (ts.isTemplateExpression(node)) {
      const text = [node.head.text, ...node.templateSpans.map(span => span.literal.text)].join('1');
      if (sentenceLike(text) && !isName(node, file)) take(node, text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** A key, what is compared, or the name of something that is asked for by it. */
function isName(node: ts.Expression, file: ts.SourceFile): boolean {
  const { parent } = node;
  if (ts.isStringLiteralLike(node) && (namesOfTheCore.has(node.text) || namesOfThePage.has(node.text))) return true;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return true;
  if (ts.isElementAccessExpression(parent) || ts.isCaseClause(parent) || ts.isPropertyDeclaration(parent)) return true;
  if (ts.isBinaryExpression(parent) && /^[!=]==$|^in$/.test(parent.operatorToken.getText(file))) return true;
  return (
    (ts.isCallExpression(parent) || ts.isNewExpression(parent)) &&
    parent.expression !== node &&
    (NAMES_IT.test(parent.expression.getText(file)) || /Error$/.test(parent.expression.getText(file)))
  );
}

describe('what the page says', () => {
  test('is looked for where the page is', () => {
    expect(pages.length).toBeGreaterThan(200);
    expect(namesOfTheCore.size).toBeGreaterThan(1000);
  });

  test('is found where it is planted', () => {
    const planted = `const a = <p title="Lap" class="no print">{b ? 'Not so' : 'mm'}<i>Read it {n} times</i></p>;
      const keys = { 'two words': \`M\${x} \${y}L\`, other: a === 'Not this', said: \`\${n} laps of it\` };`;
    expect(textsOf('planted.tsx', planted).map(({ text }) => text)).toEqual([
      'Lap',
      'Not so',
      'Read it',
      'times',
      '1 laps of it',
    ]);
  });

  test('stands in objects that another language fills, one in each file of src/web/words', () => {
    const files = code.filter(path => /^src\/web\/words\/.*(?<!\.test)\.tsx?$/.test(path));
    expect(files.length).toBeGreaterThan(40);
    expect(files.filter(path => !/^export const \w+Words = \{/m.test(readText(path)))).toEqual([]);
  });

  test('stands in src/web/words', () => {
    const texts = pages.flatMap(path =>
      textsOf(path, readText(path)).map(({ line, text }) => `${path}:${line}  ${text}`),
    );
    expect(texts).toEqual([]);
  });
});

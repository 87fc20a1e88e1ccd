/**
 * Who may import whom. Each rule's comment says what to do instead.
 * ARCHITECTURE.md explains the picture; test/tidy/import-rules.test.ts plants a breach of every kind and sees it caught.
 */
const path = require('node:path');

/** The pure folders and what each may import. `quantity` is the vocabulary of all. */
const CORE = {
  quantity: [],
  numbers: ['quantity'],
  kart: ['quantity', 'numbers'],
  book: ['quantity', 'kart'],
  life: ['quantity', 'numbers', 'kart', 'book'],
  risk: ['quantity', 'numbers', 'kart', 'book', 'life'],
  prep: ['quantity', 'numbers', 'kart', 'book', 'life', 'risk'],
  laps: ['quantity', 'numbers', 'kart', 'book'],
  app: ['quantity', 'numbers', 'kart', 'book', 'life', 'risk', 'prep', 'laps'],
};
const core = Object.keys(CORE);

/** Packages that know no file, clock, network or screen. The list stands in ARCHITECTURE.md too. */
const PURE_PACKAGES = ['zod', 'yaml', '@noble/hashes', 'qrcode-generator'];

const TEST = '\\.test\\.tsx?$';
const any = names => `(${names.join('|')})`;
const src = names => `^src/${any(names)}/`;

const layers = core.map(folder => ({
  name: `${folder}-imports-down-only`,
  severity: 'error',
  comment:
    `src/${folder} may import only ${CORE[folder].map(f => `src/${f}`).join(', ') || 'nothing of src/'}. ` +
    'Move what is needed down into one of these, or hand it in as an argument from above.' +
    (folder === 'risk' ? ' The wish to be fast or on time must not reach the decision whether the kart is fit.' : ''),
  from: { path: `^src/${folder}/`, pathNot: TEST },
  to: { path: '^src/', pathNot: src([folder, ...CORE[folder]]) },
}));

module.exports = {
  forbidden: [
    ...layers,
    {
      name: 'core-is-pure',
      severity: 'error',
      comment:
        'The core runs in the browser too: no file, clock, network or screen. Ask for what you need through a port in ' +
        'src/app/ports.ts and build the adapter in src/host or src/store.',
      from: { path: src(core), pathNot: TEST },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'core-uses-pure-packages',
      severity: 'error',
      comment: `The core may use only ${PURE_PACKAGES.join(', ')}. Use the package in an adapter, or add a pure one to the list in ARCHITECTURE.md.`,
      from: { path: src(core), pathNot: TEST },
      to: { path: 'node_modules/', pathNot: `node_modules/${any(PURE_PACKAGES)}/` },
    },
    {
      name: 'front-doors',
      severity: 'error',
      comment:
        "Import another folder through its index.ts, which is its front door; export there what is missing. The app's ports.ts is a door too.",
      from: { path: '^src/([^/]+)/', pathNot: TEST },
      to: { path: '^src/[^/]+/', pathNot: '^src/($1/|[^/]+/index\\.tsx?$|store/[^/]+/index\\.ts$|app/ports\\.ts$)' },
    },
    {
      name: 'stores-know-ports-and-book',
      severity: 'error',
      comment:
        'A store keeps facts and knows only src/app/ports.ts and src/book. Put what it wants to decide into the app.',
      from: { path: '^src/store/', pathNot: TEST },
      to: { path: '^src/', pathNot: '^src/(store/|book/|app/(ports|index)\\.ts$)' },
    },
    {
      name: 'stores-apart',
      severity: 'error',
      comment: 'One store does not lean on another. Put what both need into src/store itself.',
      from: { path: '^src/store/([^/]+)/', pathNot: TEST },
      to: { path: '^src/store/[^/]+/', pathNot: '^src/store/$1/' },
    },
    {
      name: 'only-main-wires',
      severity: 'error',
      comment:
        'Only a face’s main.ts, and on the page the worker that keeps the book, builds stores and host adapters. Take them as an argument (a port) instead.',
      from: {
        path: '^src/(?!store/|host/)',
        pathNot: `^src/(cli|server|web)/main\\.tsx?$|^src/web/book/book-worker\\.ts$|${TEST}`,
      },
      to: { path: '^src/(store|host)/' },
    },
    {
      name: 'host-knows-ports-and-readers',
      severity: 'error',
      comment:
        'src/host carries out what the ports ask for. It knows the app’s ports and the readers of the core, never a store or a face.',
      from: { path: '^src/host/', pathNot: TEST },
      to: { path: '^src/', pathNot: '^src/(host/|app/|kart/|book/|quantity/)' },
    },
    {
      name: 'faces-apart',
      severity: 'error',
      comment:
        'Web, command line and HTTP show the same app and never each other. Put what two of them need into src/app; only src/cli/main.ts starts the server.',
      from: { path: '^src/(cli|server|web)/', pathNot: `^src/cli/main\\.ts$|${TEST}` },
      to: { path: src(['cli', 'server', 'web']), pathNot: '^src/$1/' },
    },
    {
      name: 'core-knows-no-face',
      severity: 'error',
      comment: 'Nothing below imports a face. Return a value and let the face show it.',
      from: { path: '^src/(?!cli/|server/|web/)', pathNot: TEST },
      to: { path: src(['cli', 'server', 'web']) },
    },
    {
      name: 'page-runs-in-a-browser',
      severity: 'error',
      comment: 'src/web runs in the browser, where Node is not. Ask the server, or do it with the core.',
      from: { path: '^src/web/', pathNot: TEST },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-circles',
      severity: 'error',
      comment: 'These files import each other in a circle. Move what both need into a third file.',
      from: { path: '^src/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'found',
      severity: 'error',
      comment: 'The import leads nowhere: correct the path, or declare the package in package.json.',
      from: { path: '^src/' },
      to: { couldNotResolve: true },
    },
    {
      name: 'product-without-test-tools',
      severity: 'error',
      comment:
        'A development package would not be there for a user. Move the import into a *.test.ts, or the package to dependencies.',
      from: { path: '^src/', pathNot: `${TEST}|^src/[^/]+/(arbitrary|testing)[^/]*\\.ts$` },
      to: { dependencyTypes: ['npm-dev'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true, // else imports of types alone are not seen
    tsConfig: { fileName: path.join(__dirname, 'tsconfig.json') },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};

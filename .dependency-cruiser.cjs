/**
 * The layers of DEVELOPERS.md. Imports run downwards and through a folder's index.ts; everything under lib
 * is pure unless it is named an edge here, so that a new folder is protected by default.
 */

/** Folders that may touch the machine, the clock and the database. */
const EDGES = '^lib/(commands|views|exchange|storage|worker|setup)/';
const TESTS = '^tests/';

/** From the top down. A folder may import from the rows below its own. */
const LAYERS = [
  ['commands', 'views'],
  ['exchange', 'storage', 'worker'],
  ['plan', 'forecast'],
  ['continuity'],
  ['safety'],
  ['episodes', 'simulation'],
  ['scheduling'],
  ['build', 'footage', 'estimate', 'cure', 'outwork', 'climate'],
  ['calendar'],
  ['units', 'result'],
];

const upwards = LAYERS.slice(1).map((row, index) => ({
  name: `downwards-only-${row.join('-')}`,
  comment: 'Imports run downwards only.',
  severity: 'error',
  from: { path: `^lib/(${row.join('|')})/` },
  to: { path: `^(app/|lib/(${LAYERS.slice(0, index + 1).flat().join('|')})/)` },
}));

module.exports = {
  forbidden: [
    ...upwards,
    {
      name: 'no-cycles',
      comment: 'Two files that need each other are one file, or lack a third.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'public-face-only',
      comment: 'Another folder is imported through its index.ts. Tests and start-up scripts may look inside.',
      severity: 'error',
      from: { path: '^lib/([^/]+)/', pathNot: '^lib/setup/' },
      to: { path: '^lib/', pathNot: ['^lib/$1/', '^lib/[^/]+/index[.]ts$'] },
    },
    {
      name: 'public-face-only-from-outside',
      comment: 'Pages and the seed import a folder of lib through its index.ts.',
      severity: 'error',
      from: { path: '^(app|seed)/' },
      to: { path: '^lib/', pathNot: '^lib/[^/]+/index[.]ts$' },
    },
    {
      name: 'domain-is-pure-of-packages',
      comment: 'The domain imports no package but the date-fns family: no framework, no database, no schema library.',
      severity: 'error',
      from: { path: '^lib/', pathNot: EDGES },
      to: { dependencyTypesNot: ['local', 'localmodule', 'aliased', 'aliased-tsconfig', 'aliased-tsconfig-paths'], pathNot: '^node_modules/(date-fns|@date-fns)/' },
    },
    {
      name: 'domain-is-pure-of-node',
      comment: 'The domain knows no machine: no node: module.',
      severity: 'error',
      from: { path: '^lib/', pathNot: EDGES },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'domain-knows-no-edge',
      comment: 'The domain never reaches an edge or a page. Covers folders that LAYERS does not name yet.',
      severity: 'error',
      from: { path: '^lib/', pathNot: EDGES },
      to: { path: [EDGES, '^(app|seed|tests)/'] },
    },
    {
      name: 'engine-knows-no-trade',
      comment: 'Scheduling and calendar know activities and time, no task, part or paint.',
      severity: 'error',
      from: { path: '^lib/(scheduling|calendar)/' },
      to: { path: '^lib/', pathNot: '^lib/(scheduling|calendar|units|result)/' },
    },
    {
      name: 'worker-sees-the-engine-only',
      comment: 'What crosses to the threads is the engine’s own data and the chances of a simulation.',
      severity: 'error',
      from: { path: '^lib/worker/' },
      to: { path: '^(app|lib)/', pathNot: '^lib/(worker|scheduling|simulation|result|units)/' },
    },
    {
      name: 'app-goes-through-commands-and-views',
      comment: 'A page neither stores nor computes.',
      severity: 'error',
      from: { path: '^app/' },
      to: { path: '^lib/(storage|worker|setup)/' },
    },
    {
      name: 'nothing-imports-tests-or-pages',
      comment: 'Neither tests nor pages are a library.',
      severity: 'error',
      from: { pathNot: [TESTS, '^app/'] },
      to: { path: '^(tests|app)/' },
    },
    {
      name: 'no-unresolved',
      comment: 'Every import leads somewhere.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: ['node_modules', '^lib/storage/generated/'] },
    exclude: { path: ['^lib/storage/generated/', '^\\.next/'] },
    combinedDependencies: false,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'], mainFields: ['module', 'main', 'types'] },
  },
};

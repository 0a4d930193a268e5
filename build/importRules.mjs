/**
 * Who may import whom: the house rules on layout and direction of imports, for dependency-cruiser.
 * `npm test` runs it over the tree; tests/house/importRules.test.ts shows each rule failing once.
 */

/** Rooms of the solver in their order: each may import the ones before it. */
const ROOMS = ['geometry', 'movement', 'teeth', 'train', 'planting', 'clearance', 'marking', 'made', 'files', 'words'];

/** The one file that may import planck. */
const PLANCK_FILE = '^solver/clearance/planckAdapter\\.ts$';

/**
 * What may be imported from a room besides its `index.ts`: at most four files each, either plain data that everyone
 * speaks of, or a face of a part of the room.
 */
const PUBLIC = {
  movement: ['schema', 'ids', 'measures', 'decimal'],
  teeth: ['cutting/index', 'outlines/index'],
  train: ['turning/rational', 'counts/index', 'drive/index'],
  planting: ['placed'],
  clearance: ['safe/index', 'rehearsal/index', 'bodies/index', 'findPlanting/index'],
  marking: ['ways/index'],
  made: ['errors/index', 'fits/index'],
  files: ['drawing', 'pages/index'],
  words: ['clearance/index', 'train/index', 'shop/index', 'planting/index'],
};

const FACES = ROOMS.map((room) => `${room}/(${['index', ...(PUBLIC[room] ?? [])].join('|')})`);
/** Files that belong to no room: plain numbers that every room and the window speak of, and how long work is written. */
const BESIDE_ROOMS = 'tolerances|steps';
const A_FACE = `^solver/(${[BESIDE_ROOMS, ...FACES].join('|')})\\.ts$`;

const inPackage = (names) => `(^|/)node_modules/(${names.join('|')})(/|$)`;

const roomOrder = ROOMS.map((room, index) => ({
  name: `room-order-${room}`,
  comment: `solver/${room} may import itself and ${ROOMS.slice(0, index).join(', ') || 'no other room'}.`,
  severity: 'error',
  from: { path: `^solver/${room}/` },
  to: {
    path: '^solver/',
    pathNot: [`^solver/(${ROOMS.slice(0, index + 1).join('|')})/`, `^solver/(${BESIDE_ROOMS})\\.ts$`],
  },
}));

const forbidden = [
  ...roomOrder,
  {
    name: 'geometry-alone',
    comment: 'solver/geometry imports robust-predicates and, for outlines as data, nothing else from outside.',
    severity: 'error',
    from: { path: '^solver/geometry/' },
    to: { path: '(^|/)node_modules/', pathNot: inPackage(['robust-predicates', 'clipper2-ts']) },
  },
  {
    name: 'solver-imports-solver',
    comment: 'Nothing of ours outside solver/ is known to the solver.',
    severity: 'error',
    from: { path: '^solver/' },
    to: { path: '^(renderer|electron|tests|build|demo-data)/' },
  },
  {
    name: 'solver-is-pure',
    comment: 'The solver knows no Node, no Electron, no Svelte and no three.',
    severity: 'error',
    from: { path: '^solver/' },
    to: { path: inPackage(['electron', 'svelte', 'three', 'bits-ui', 'commander']) },
  },
  {
    name: 'solver-without-node',
    comment: 'The solver runs in a page and in a worker: no modules of Node.',
    severity: 'error',
    from: { path: '^solver/' },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: 'one-planck-file',
    comment: 'planck has traps; one adapter file knows them.',
    severity: 'error',
    from: { pathNot: PLANCK_FILE },
    to: { path: inPackage(['planck']) },
  },
  {
    name: 'three-in-the-bench',
    comment: 'three lives in renderer/bench/.',
    severity: 'error',
    from: { path: '^(solver|renderer|electron)/', pathNot: '^renderer/bench/' },
    to: { path: inPackage(['three', '@types/three']) },
  },
  {
    name: 'renderer-without-node',
    comment: 'The page has no Node.',
    severity: 'error',
    from: { path: '^renderer/' },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: 'renderer-through-the-bridge',
    comment: 'Of electron/ the page may know electron/bridge.ts only.',
    severity: 'error',
    from: { path: '^renderer/' },
    to: { path: ['^electron/', inPackage(['electron'])], pathNot: '^electron/bridge\\.ts$' },
  },
  {
    name: 'renderer-takes-types-of-the-bridge',
    comment: 'Of the bridge the page takes types alone: the parsers run on the other side.',
    severity: 'error',
    from: { path: '^renderer/' },
    to: { path: '^electron/bridge\\.ts$', dependencyTypesNot: ['type-only'] },
  },
  {
    name: 'electron-without-renderer',
    comment: 'The shell serves the built page and knows nothing of its source.',
    severity: 'error',
    from: { path: '^electron/' },
    to: { path: '^(renderer|tests|build)/' },
  },
  {
    name: 'through-the-face',
    comment: 'A room is reached through its index.ts or a file that PUBLIC names.',
    severity: 'error',
    from: { path: '^(renderer|electron)/' },
    to: { path: '^solver/', pathNot: A_FACE },
  },
  {
    name: 'rooms-through-the-face',
    comment: 'From another room, too, a room is reached through its index.ts or a file that PUBLIC names.',
    severity: 'error',
    from: { path: '^solver/([^/]+)/' },
    to: { path: '^solver/', pathNot: ['^solver/$1/', A_FACE] },
  },
  {
    name: 'no-barrels',
    comment: "Only a room's face passes on what others define.",
    severity: 'error',
    from: { path: '^(solver|renderer|electron)/', pathNot: A_FACE },
    to: { dependencyTypes: ['export'] },
  },
  {
    name: 'inside-a-room-the-defining-file',
    comment: 'Inside a room its own face is not used: that would make a ring.',
    severity: 'error',
    from: { path: '^solver/([^/]+)/.+', pathNot: '^solver/[^/]+/index\\.ts$' },
    to: { path: '^solver/$1/index\\.ts$' },
  },
  {
    name: 'no-rings',
    comment:
      'No file may reach itself through its imports, imports of types alone counted: what knows each other is one file.',
    severity: 'error',
    from: { path: '^(solver|renderer|electron)/' },
    to: { circular: true },
  },
  {
    name: 'state-knows-no-feature',
    comment: 'Features import the state of the window; the state imports itself and words only.',
    severity: 'error',
    from: { path: '^renderer/(state|wording)/' },
    to: { path: '^renderer/', pathNot: '^renderer/(state|wording)/' },
  },
  {
    name: 'gestures-know-no-svelte',
    comment: 'Gestures are plain modules with a port: they are tested, and would serve another page, without Svelte.',
    severity: 'error',
    from: { path: '^renderer/gestures/' },
    to: { path: ['\\.svelte(\\.ts)?$', inPackage(['svelte'])] },
  },
  {
    name: 'resolves',
    comment: 'Every import leads somewhere.',
    severity: 'error',
    from: { path: '^(solver|renderer|electron)/' },
    to: { couldNotResolve: true, pathNot: '\\?(raw|url|worker)$' },
  },
  {
    name: 'shipped-code-without-tests',
    comment: 'What ships does not import tests.',
    severity: 'error',
    from: { path: '^(solver|renderer|electron)/' },
    to: { path: '^tests/' },
  },
];

export default {
  forbidden,
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^build/(out|runtime)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'browser', 'import', 'node', 'default'],
      extensions: ['.ts', '.mts', '.js', '.mjs', '.cjs', '.svelte', '.json'],
    },
  },
};

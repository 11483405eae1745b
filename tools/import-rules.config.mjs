// The house's import rules, for dependency-cruiser. tests/rules proves that each of them can fail.
import { builtinModules } from "node:module";

/** The model's rooms, each with the rooms that it may import from: always earlier ones. */
export const rooms = {
  base: [],
  water: ["base"],
  materials: ["base"],
  shape: ["base", "water", "materials"],
  shaping: ["base", "shape"],
  parts: ["base", "water", "materials", "shape"],
  bait: ["base", "water", "materials", "shape", "parts"],
  checks: ["base", "shape", "parts", "bait"],
  hydrostatics: ["base", "water", "materials", "shape", "parts", "bait"],
  statics: ["base", "water", "materials", "shape", "parts", "bait", "hydrostatics"],
  plan: ["base", "water", "materials", "shape", "parts", "bait", "hydrostatics", "statics"],
  forces: ["base", "water", "materials", "shape", "parts", "bait", "hydrostatics"],
  line: ["base", "water", "materials", "shape", "parts", "bait", "hydrostatics", "statics", "forces"],
  tow: ["base", "water", "materials", "shape", "parts", "bait", "hydrostatics", "statics", "forces", "line"],
  bench: [
    "base",
    "water",
    "materials",
    "shape",
    "parts",
    "bait",
    "hydrostatics",
    "statics",
    "forces",
    "line",
    "tow",
  ],
  motion: [
    "base",
    "water",
    "materials",
    "shape",
    "parts",
    "bait",
    "hydrostatics",
    "statics",
    "forces",
    "line",
    "tow",
  ],
};

/** Outside the model: what each folder of src may import from, besides itself. */
export const folders = {
  model: [],
  units: [],
  languages: [],
  document: ["model"],
  lesson: ["model", "document", "units"],
  drawing: ["model", "document", "units"],
  sheet: ["model", "document", "units", "drawing"],
  runner: ["model", "document", "units", "languages", "lesson", "drawing", "sheet"],
  ui: ["model", "document", "units", "languages", "lesson", "drawing", "runner", "sheet"],
};

/** @type {import("dependency-cruiser").DependencyType[]} */
const packages = ["npm", "npm-dev", "npm-optional", "npm-peer", "npm-bundled", "npm-no-pkg", "npm-unknown"];
const either = (/** @type {readonly string[]} */ names) => `(?:${names.join("|")})`;

/**
 * What a component may not import, as patterns for lint. The checker of this file reads components as the compiler leaves
 * them, without their imports of types; lint reads what is written. The lists come from the rules below and above, so that a
 * new room is in both.
 */
export const closedToComponents = {
  inner: [
    ...Object.keys(rooms).map((room) => `**/model/${room}/*`),
    ...[
      ...Object.keys(folders).filter((folder) => folder !== "model" && folder !== "ui"),
      "stage",
      "plots",
    ].map((folder) => `**/${folder}/*`),
  ],
  outside: ["**/tests/**", "**/tools/**"],
  engine: ["planck", "planck/*"],
  drawing: ["pixi.js", "pixi.js/*", "@pixi/*"],
  node: builtinModules.flatMap((name) => [name, `node:${name}`]),
};

/** Folders whose index.ts is their only door. */
const withDoors =
  "model/[^/]+|document|units|languages|lesson|drawing|runner|sheet|ui/stage|ui/plots|ui/state|ui/kept|ui/maker|ui/words/[^/]+";
const doors = `^src/(${withDoors})/index\\.ts$`;

const severity = /** @type {const} */ ("error");

/** @type {import("dependency-cruiser").IRegularForbiddenRuleType[]} */
const forbidden = [
  {
    name: "no-cycles",
    comment:
      "Two files that need each other are one thing, or a third is missing. A component that draws itself within itself may import itself.",
    severity,
    from: { path: "^(.+)$" },
    to: { circular: true, pathNot: "^$1$" },
  },
  {
    name: "no-unresolved",
    comment: "An import must lead somewhere.",
    severity,
    from: {},
    to: { couldNotResolve: true },
  },
  ...Object.entries(rooms).map(([room, earlier]) => ({
    name: `model-order-${room}`,
    comment: `The model's ${room} room may import from: ${earlier.join(", ") || "no other room"}.`,
    severity,
    from: { path: `^src/model/${room}/` },
    to: { path: "^src/model/", pathNot: `^src/model/${either([room, ...earlier])}/` },
  })),
  {
    name: "model-known-rooms",
    comment: "Every file of the model lies in one of the rooms that the order names.",
    severity,
    from: {},
    to: { path: "^src/model/", pathNot: `^src/model/${either(Object.keys(rooms))}/` },
  },
  ...Object.entries(folders).map(([folder, others]) => ({
    name: `folder-order-${folder}`,
    comment: `src/${folder} may import from: ${others.join(", ") || "no other folder of src"}.`,
    severity,
    from: { path: `^src/${folder}/` },
    to: { path: "^(src|tests|tools)/", pathNot: `^src/${either([folder, ...others])}/` },
  })),
  {
    name: "only-doors",
    comment: "A folder's index.ts is its only door: other folders come in by it.",
    severity,
    from: { path: `^src/(${withDoors})/` },
    to: { path: `^src/(${withDoors})/`, pathNot: ["^src/$1/", doors] },
  },
  {
    name: "only-doors-for-the-page",
    comment: "The page and its views, too, come in by the door.",
    severity,
    from: { path: "^src/", pathNot: `^src/(${withDoors})/` },
    to: { path: `^src/(${withDoors})/`, pathNot: doors },
  },
  {
    name: "model-without-packages",
    comment: "The model's core is plain TypeScript; only the motion room uses a package.",
    severity,
    from: { path: "^src/model/", pathNot: "^src/model/motion/" },
    to: { dependencyTypes: packages },
  },
  {
    name: "motion-only-planck",
    comment: "planck is the model's only package.",
    severity,
    from: { path: "^src/model/motion/" },
    to: { dependencyTypes: packages, pathNot: "node_modules/planck/" },
  },
  {
    name: "planck-only-in-motion",
    comment: "The rigid-body engine stays behind the motion room.",
    severity,
    from: { path: "^src/", pathNot: "^src/model/motion/" },
    to: { path: "node_modules/planck/" },
  },
  {
    name: "pixi-only-in-stage",
    comment: "Only the stage draws with Pixi.",
    severity,
    from: { path: "^src/", pathNot: "^src/ui/stage/" },
    to: { path: "node_modules/(pixi\\.js|@pixi)/" },
  },
  {
    name: "page-packages-only-in-page",
    comment: "Svelte and its parts belong to the page.",
    severity,
    from: { path: "^src/", pathNot: "^src/ui/" },
    to: { path: "node_modules/(svelte|@lucide|tinykeys|idb)/" },
  },
  {
    name: "node-only-in-runner",
    comment: "Only the headless command knows Node.",
    severity,
    from: { path: "^src/", pathNot: "^src/runner/" },
    to: { dependencyTypes: ["core"], path: `^(node:)?${either(builtinModules)}$` },
  },
  {
    name: "no-development-packages",
    comment: "What the program needs to run stands under dependencies.",
    severity,
    from: { path: "^src/", pathNot: "\\.test\\.ts$" },
    // Svelte compiles itself away, and stands among the development packages for that reason.
    to: { dependencyTypes: ["npm-dev"], pathNot: "node_modules/svelte/" },
  },
];

/** @type {{ forbidden: typeof forbidden, options: import("dependency-cruiser").ICruiseOptions }} */
export default {
  forbidden,
  options: {
    doNotFollow: { path: "node_modules" },
    // Imports of types count too: a type is knowledge of the other room.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    moduleSystems: ["es6"],
    enhancedResolveOptions: {
      extensions: [".ts", ".svelte", ".svelte.ts", ".mjs", ".js", ".json", ".d.ts"],
      exportsFields: ["exports"],
      conditionNames: ["svelte", "browser", "import", "types", "default"],
    },
  },
};

// The house's import rules, for dependency-cruiser. tests/rules proves that each of them can fail.
import { builtinModules } from "node:module";

/** The model's rooms, each with the rooms that it may import from: always earlier ones. */
const rooms = {
  base: [],
  water: ["base"],
  materials: ["base"],
  shape: ["base", "water", "materials"],
  bait: ["base", "water", "materials", "shape"],
  statics: ["base", "water", "materials", "shape", "bait"],
  forces: ["base", "water", "materials", "shape", "bait"],
  line: ["base", "water", "materials", "shape", "bait", "statics", "forces"],
  tow: ["base", "water", "materials", "shape", "bait", "statics", "forces", "line"],
  bench: ["base", "water", "materials", "shape", "bait", "statics", "forces", "line", "tow"],
  motion: ["base", "water", "materials", "shape", "bait", "statics", "forces", "line", "tow"],
};

/** Outside the model: what each folder of src may import from, besides itself. */
const folders = {
  model: [],
  units: [],
  document: ["model"],
  runner: ["model", "document", "units"],
  sheet: ["model", "document", "units"],
  ui: ["model", "document", "units", "runner", "sheet"],
};

/** @type {import("dependency-cruiser").DependencyType[]} */
const packages = ["npm", "npm-dev", "npm-optional", "npm-peer", "npm-bundled", "npm-no-pkg", "npm-unknown"];
const either = (/** @type {readonly string[]} */ names) => `(?:${names.join("|")})`;

/** Folders whose index.ts is their only door. */
const withDoors = "model/[^/]+|document|units|runner|sheet|ui/stage|ui/plots";
const doors = `^src/(${withDoors})/index\\.ts$`;

const severity = /** @type {const} */ ("error");

/** @type {import("dependency-cruiser").IRegularForbiddenRuleType[]} */
const forbidden = [
  {
    name: "no-cycles",
    comment: "Two files that need each other are one thing, or a third is missing.",
    severity,
    from: {},
    to: { circular: true },
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
    to: { path: "node_modules/(svelte|@lucide|tinykeys|idb-keyval)/" },
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

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";
import { offline } from "./tools/offline.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));

/**
 * The page carries a strict Content-Security-Policy. The development server puts styles and its reload script
 * into the page in ways that policy forbids, so there, and only there, the policy is left out.
 */
const withoutPolicyInDevelopment: Plugin = {
  name: "trimwright:without-policy-in-development",
  apply: "serve",
  transformIndexHtml: (html) => html.replace(/<meta[^>]*http-equiv="Content-Security-Policy"[^>]*>/is, ""),
};

/**
 * The stage draws on the plain 2D canvas and asks for no other renderer. The drawing library names its WebGPU
 * renderer all the same, and the bundler then puts pieces of it into what the first view loads: it is left out.
 */
const withoutWebGPU: Plugin = {
  name: "trimwright:without-webgpu",
  enforce: "pre",
  load: (id) =>
    /\/pixi\.js\/lib\/rendering\/renderers\/gpu\/WebGPURenderer\.mjs$/.test(id)
      ? "export class WebGPURenderer { constructor() { throw new Error('The stage does not draw with WebGPU.'); } }"
      : null,
};

/**
 * The drawing library's doors bring more than the stage draws with: sheets of sprites, video, a reader of SVG files, words with tags
 * in them, and 148 names of colours. Each is replaced by one that refuses.
 */
const unusedOfDrawing: readonly (readonly [RegExp, string])[] = [
  [/\/spritesheet\/init\.mjs$/, ""],
  [
    /\/texture\/sources\/VideoSource\.mjs$/,
    "export class VideoSource { static extension = 'texture-source'; static test() { return false; } }",
  ],
  [
    /\/graphics\/shared\/svg\/SVGParser\.mjs$/,
    "export function SVGParser() { throw new Error('The stage reads no SVG.'); }",
  ],
  [
    /\/text\/canvas\/utils\/measureTaggedText\.mjs$/,
    ["measureTaggedText", "tokenizeTaggedRuns", "wordWrapTaggedLines"]
      .map((name) => `export function ${name}() { throw new Error('Words on the stage have no tags.'); }`)
      .join("\n"),
  ],
  // Colours of the stage are numbers; the library itself names black and white.
  [
    /\/colord\/plugins\/names\.mjs$/,
    "const named = { black: 0, white: 255 };\n" +
      "const read = (name) => Object.hasOwn(named, name) ? { r: named[name], g: named[name], b: named[name], a: 1 } : null;\n" +
      'export default (_, parsers) => void parsers.string.push([read, "name"]);',
  ],
];
const withoutUnusedOfDrawing: Plugin = {
  name: "trimwright:without-unused-of-drawing",
  enforce: "pre",
  load: (id) =>
    /\/(?:pixi\.js\/lib|@pixi\/colord)\//.test(id)
      ? (unusedOfDrawing.find(([file]) => file.test(id))?.[1] ?? null)
      : null,
};

/**
 * The page checks documents by their schema and never writes a JSON Schema: the headless command does that. The schema
 * library loads its writer all the same. Here each exported function of the writer becomes one that refuses. What stands
 * in front of the first of them stays as it is: the bounds of numbers and texts are read by it.
 */
const withoutSchemaWriter: Plugin = {
  name: "trimwright:without-schema-writer",
  apply: "build",
  enforce: "pre",
  load: (id) => {
    const file = /\/zod\/v4\/core\/(json-schema-processors|to-json-schema)\.js$/.exec(id)?.[1];
    if (file === undefined) return null;
    const source = readFileSync(id, "utf8");
    const first = file === "to-json-schema" ? 0 : source.indexOf("export const stringProcessor");
    if (first < 0 || (first > 0 && !source.slice(0, first).includes("export function aggregateChecks")))
      throw new Error(
        `${id}: the schema library has changed. Look again at what the page needs of its writer.`,
      );
    const names = [...source.slice(first).matchAll(/^export (?:const|function) (\w+)/gm)].map(
      ([, name]) => name,
    );
    return [
      source.slice(0, first),
      "const refuse = () => { throw new Error('The page writes no JSON Schema; the headless command does.'); };",
      ...names.map((name) => `export const ${String(name)} = () => refuse;`),
    ].join("\n");
  },
};

/**
 * The PDF library can turn whole pages and foreign pictures into PDF, and names further packages for that. The sheets are
 * drawn line by line: those packages stay out of the build.
 */
const optionalForPdf = ["html2canvas", "dompurify", "canvg"];
const withoutOptionalForPdf: Plugin = {
  name: "trimwright:without-optional-for-pdf",
  enforce: "pre",
  resolveId: (id, importer) =>
    optionalForPdf.includes(id) && /\/node_modules\/jspdf\//.test(importer ?? "") ? `\0absent:${id}` : null,
  load: (id) =>
    id.startsWith("\0absent:") ? "throw new Error('The sheets are drawn without this package.');" : null,
};

/** The solid library can also run in Node, and then asks for this; in a browser it never gets there. */
const withoutNodeForSolids = (): Plugin => ({
  name: "trimwright:without-node-for-solids",
  enforce: "pre",
  resolveId: (id, importer) =>
    id === "node:module" && /\/node_modules\/manifold-3d\//.test(importer ?? "") ? "\0absent:node" : null,
  load: (id) => (id === "\0absent:node" ? "export const createRequire = undefined;" : null),
});

/**
 * Rooms whose modules do nothing but define, so that what a page or a worker does not use stays out of it: the page
 * needs no physics engine, the worker no schema. The engine's own room is left out: its imports set the engine up. Of the
 * plots only the door: whoever saves a file through it needs no plot (the plots' own modules bring their styles).
 */
const treeshake = {
  moduleSideEffects: (id: string): boolean =>
    !/\/src\/((model|document|drawing|lesson|sheet|runner|units|ui\/maker)\/|ui\/plots\/index\.ts)/.test(
      id,
    ) || /\/motion\/engine\/|\/runner\/worker/.test(id),
};

/** Chunks that the page itself imports, by their names. */
const BEGINS =
  /\/(base|build|compile|disclose-version|figures|hanger|parse|preload-helper|quiet|speaker|state|units)-[^/]+\.js$/;

export default defineConfig({
  root: "src/ui",
  base: "./",
  plugins: [
    svelte(),
    withoutPolicyInDevelopment,
    withoutWebGPU,
    withoutUnusedOfDrawing,
    withoutSchemaWriter,
    withoutOptionalForPdf,
    withoutNodeForSolids(),
    offline(),
  ],
  server: { host: "127.0.0.1", fs: { allow: [here] } },
  build: {
    outDir: "../../dist",
    emptyOutDir: true,
    target: "es2023",
    // The manifest says which chunks the first view loads: tools/size.mjs weighs them.
    manifest: true,
    // Small files inlined as data: URLs would need a wider policy.
    assetsInlineLimit: 0,
    // What the page itself begins with is there when a part is asked for: no list of what a part needs has to name it.
    modulePreload: {
      resolveDependencies: (_, deps, { hostType }) =>
        hostType === "js" ? deps.filter((one) => !BEGINS.test(one)) : deps,
    },
    // How long the plugins take is nothing that somebody who starts the page needs to read.
    rolldownOptions: { treeshake, checks: { bundlerTimings: false } },
  },
  worker: { format: "es", plugins: () => [withoutNodeForSolids()], rolldownOptions: { treeshake } },
});

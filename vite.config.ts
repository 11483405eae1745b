import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

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
 * Rooms whose modules do nothing but define, so that what a page or a worker does not use stays out of it: the page
 * needs no physics engine, the worker no schema. The engine's own room is left out: its imports set the engine up. Of the
 * plots only the door: whoever saves a file through it needs no plot (the plots' own modules bring their styles).
 */
const treeshake = {
  moduleSideEffects: (id: string): boolean =>
    !/\/src\/((model|document|runner|units)\/|ui\/plots\/index\.ts)/.test(id) ||
    /\/motion\/engine\/|\/runner\/worker/.test(id),
};

export default defineConfig({
  root: "src/ui",
  base: "./",
  plugins: [svelte(), withoutPolicyInDevelopment],
  server: { host: "127.0.0.1", fs: { allow: [here] } },
  build: {
    outDir: "../../dist",
    emptyOutDir: true,
    target: "es2023",
    // The manifest says which chunks the first view loads: tools/size.mjs weighs them.
    manifest: true,
    // Small files inlined as data: URLs would need a wider policy.
    assetsInlineLimit: 0,
    rolldownOptions: { treeshake },
  },
  worker: { format: "es", rolldownOptions: { treeshake } },
});

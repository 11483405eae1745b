import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

export default defineConfig({
  root: "src/ui",
  base: "./",
  plugins: [svelte()],
  build: { outDir: "../../dist", emptyOutDir: true, target: "es2023" },
  worker: { format: "es" },
});

import { svelte } from "@sveltejs/vite-plugin-svelte";
import { configDefaults, defineConfig } from "vitest/config";

const common = { extends: true as const };
/** ms */
const LONGEST = 600_000;
const exclude = [...configDefaults.exclude];

/** Six sorts of tests, each a stage of `npm test`: see DEVELOPERS.md. */
export default defineConfig({
  plugins: [svelte()],
  test: {
    environment: "node",
    // No test leaves anything behind in a module, so files share what is loaded: half the time goes otherwise on loading.
    isolate: false,
    maxWorkers: 2,
    // Only what hangs is stopped, in a test or in what is done before and after it: a slow machine is none of a test's business.
    testTimeout: LONGEST,
    hookTimeout: LONGEST,
    teardownTimeout: LONGEST,
    projects: [
      { ...common, test: { name: "unit", include: ["tests/unit/**/*.test.ts"], exclude } },
      { ...common, test: { name: "outputs", include: ["tests/outputs/**/*.test.ts"], exclude } },
      { ...common, test: { name: "rules", include: ["tests/rules/*.test.ts"], exclude } },
      { ...common, test: { name: "published", include: ["tests/published/**/*.test.ts"], exclude } },
      { ...common, test: { name: "properties", include: ["tests/properties/**/*.test.ts"], exclude } },
      { ...common, test: { name: "golden", include: ["tests/golden/**/*.test.ts"], exclude } },
    ],
  },
});

import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    environment: "node",
    projects: [
      { test: { name: "unit", include: ["tests/unit/**/*.test.ts"] } },
      { test: { name: "published", include: ["tests/published/**/*.test.ts"] } },
      { test: { name: "properties", include: ["tests/properties/**/*.test.ts", "tests/golden/**/*.test.ts"], testTimeout: 120_000 } },
    ],
  },
});

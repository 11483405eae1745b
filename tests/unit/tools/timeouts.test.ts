import { expect, it } from "vitest";
import config from "../../../vitest.config";

// A hook may do as much as a test: beforeAll answers whole scenarios.
it("what is done before and after a test may take as long as the test itself", () => {
  const { testTimeout, hookTimeout, teardownTimeout } = config.test ?? {};
  expect(testTimeout).toBeGreaterThanOrEqual(60_000);
  expect([hookTimeout, teardownTimeout]).toEqual([testTimeout, testTimeout]);
});

import { describe, expect, it } from "vitest";
import { closingLine, fromPlaywright, fromVitest, sum, withExit } from "../../../tools/lib/tally.mjs";

const cases = (...statuses: string[]) => statuses.map((status) => ({ status }));

describe("the tally of test cases", () => {
  it("counts Vitest's cases by what became of them", () => {
    const report = {
      testResults: [
        {
          name: "/a/tests/unit/b.test.ts",
          status: "passed",
          assertionResults: cases("passed", "skipped", "todo"),
        },
        {
          name: "C:\\a\\tests\\unit\\c.test.ts",
          status: "failed",
          assertionResults: cases("passed", "failed"),
        },
        {
          name: "/a/tests/golden/unit.test.ts",
          status: "passed",
          assertionResults: cases("passed", "passed"),
        },
      ],
    };
    expect(fromVitest(report, "unit")).toEqual({ passed: 2, failed: 1, skipped: 2, second: 0 });
    expect(fromVitest(report, "golden")).toEqual({ passed: 2, failed: 0, skipped: 0, second: 0 });
    expect(fromVitest(report, "rules")).toEqual({ passed: 0, failed: 0, skipped: 0, second: 0 });
  });
  it("counts a file that broke before or beside its cases as failed", () => {
    const report = {
      testResults: [
        { name: "/tests/unit/a.test.ts", status: "failed", assertionResults: [] },
        { name: "/tests/unit/b.test.ts", status: "failed", assertionResults: cases("passed") },
      ],
    };
    expect(fromVitest(report, "unit")).toEqual({ passed: 1, failed: 2, skipped: 0, second: 0 });
  });
  it("tells a browser case apart that passed only at a second try", () => {
    expect(fromPlaywright({ stats: { expected: 5, unexpected: 1, flaky: 2, skipped: 3 } })).toEqual({
      passed: 7,
      failed: 1,
      skipped: 3,
      second: 2,
    });
  });
  it("lets no bad end and no empty run pass", () => {
    const good = { passed: 4, failed: 0, skipped: 0, second: 0 };
    expect(withExit(good, 0)).toEqual(good);
    expect(withExit(good, 1).failed).toBe(1);
    expect(withExit({ passed: 0, failed: 0, skipped: 7, second: 0 }, 0).failed).toBe(1);
    expect(withExit({ passed: 4, failed: 2, skipped: 0, second: 0 }, 1).failed).toBe(2);
  });
  it("closes with one line", () => {
    const total = sum([
      { passed: 4, failed: 0, skipped: 1, second: 0 },
      { passed: 3, failed: 2, skipped: 0, second: 0 },
    ]);
    expect(closingLine(total)).toBe("7 passed, 2 failed");
  });
});

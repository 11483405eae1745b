import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { whyStale } from "../../../tools/lib/packages.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "trimwright-packages-"));
  lock({ "": { version: "1.0.0" }, [a]: { version: "1.0.0", integrity: "x" }, [other]: otherSystem });
});
afterEach(() => rmSync(folder, { recursive: true }));

const a = "node_modules/a";
const other = "node_modules/for-another-system";
const otherSystem = { version: "3.0.0", integrity: "z", optional: true };

function lock(packages: object): void {
  writeFileSync(join(folder, "package-lock.json"), JSON.stringify({ packages }));
}
function install(packages: object): void {
  mkdirSync(join(folder, a), { recursive: true });
  writeFileSync(join(folder, "node_modules/.package-lock.json"), JSON.stringify({ packages }));
}

describe("whether the locked packages are installed", () => {
  it("sees that nothing is", () => {
    expect(whyStale(folder)).toBe("no packages are installed yet");
  });
  it("is content with all but those of other systems", () => {
    install({ [a]: { version: "1.0.0", integrity: "x" } });
    expect(whyStale(folder)).toBeNull();
  });
  it("sees a package that is missing, of another version, of another content, or gone", () => {
    install({});
    expect(whyStale(folder)).toBe("node_modules/a is not installed");
    install({ [a]: { version: "0.9.0", integrity: "x" } });
    expect(whyStale(folder)).toBe("node_modules/a is 0.9.0, the lock file says 1.0.0");
    install({ [a]: { version: "1.0.0", integrity: "y" } });
    expect(whyStale(folder)).not.toBeNull();
    install({ [a]: { version: "1.0.0", integrity: "x" } });
    rmSync(join(folder, a), { recursive: true });
    expect(whyStale(folder)).toBe("node_modules/a has gone");
  });
});

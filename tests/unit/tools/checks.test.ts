import { describe, expect, it } from "vitest";
import { faultsOf } from "../../../tools/lock.mjs";
import { filesOf } from "../../../tools/size.mjs";

describe("the check of the lock file", () => {
  const lock = (entry: object) => JSON.stringify({ packages: { "": {}, "node_modules/a": entry } });
  const described = (version: string) => JSON.stringify({ dependencies: { a: version } });

  it("finds nothing wrong with pinned packages and checksums", () => {
    expect(faultsOf(lock({ version: "1.0.0", integrity: "x" }), described("1.0.0"))).toEqual([]);
  });
  it("finds an address, a missing checksum and a loose version", () => {
    expect(faultsOf(lock({ integrity: "x", resolved: "y" }), described("1.0.0"))).toHaveLength(1);
    expect(faultsOf(lock({ version: "1.0.0" }), described("1.0.0"))).toHaveLength(1);
    expect(faultsOf(lock({ integrity: "x" }), described("^1.0.0"))).toHaveLength(1);
  });
});

describe("the weight of the page's start", () => {
  it("takes in what is imported at once, once, round cycles too, and nothing that comes later", () => {
    const manifest = {
      main: { file: "main.js", isEntry: true, imports: ["a", "b"], dynamicImports: ["later"] },
      a: { file: "a.js", imports: ["b"] },
      b: { file: "b.js", imports: ["a"] },
      later: { file: "later.js", imports: ["a"] },
    };
    expect(filesOf(manifest, "main").sort()).toEqual(["a.js", "b.js", "main.js"]);
  });
  it("does not pass over a chunk that it does not know", () => {
    expect(() => filesOf({ main: { file: "main.js", imports: ["gone"] } }, "main")).toThrow("gone");
  });
});

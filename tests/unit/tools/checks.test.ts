import { describe, expect, it } from "vitest";
import { faultsOf } from "../../../tools/lock.mjs";
import { faultsOf as deadCode } from "../../../tools/unused.mjs";
import { releaseOf } from "../../../tools/offline.mjs";
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

describe("the check for code that only tests use", () => {
  const report = {
    issues: [
      { file: "src/a/index.ts", exports: [{ name: "door" }] },
      { file: "src/a/one.ts", exports: [{ name: "used" }, { name: "law" }] },
      { file: "src/b/alone.ts", files: [{ name: "src/b/alone.ts" }], exports: [] },
    ],
  };

  it("finds what the program does not use, but for a room's door", () => {
    const { faults, spent } = deadCode(report, {});
    expect(faults).toEqual([
      expect.stringMatching(/^src\/a\/one\.ts: nothing in src uses used\./),
      expect.stringMatching(/^src\/a\/one\.ts: nothing in src uses law\./),
      "src/b/alone.ts: nothing in src imports this file.",
    ]);
    expect(spent).toEqual([]);
  });
  it("lets pass what the list names, and says what the list need not name", () => {
    const kept = { "src/a/one.ts": { used: "w", law: "w" }, "src/b/alone.ts": { "*": "w" } };
    expect(deadCode(report, kept)).toEqual({ faults: [], spent: [] });
    expect(deadCode(report, { ...kept, "src/a/two.ts": { gone: "w" } })).toEqual({
      faults: [],
      spent: [expect.stringContaining("names gone of src/a/two.ts")],
    });
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

describe("what the service worker keeps", () => {
  const files = {
    "index.html": "page",
    "offline.js": "worker",
    "assets/b.js": "b",
    "assets/two words.svg": "<svg/>",
    ".vite/manifest.json": "{}",
    "assets/b.js.map": "map",
  };
  const release = (more: object = {}) => releaseOf(new Map(Object.entries({ ...files, ...more })));

  it("is every file of the page by its address, but for the page, the worker and what is not for the page", () => {
    expect(release().files).toEqual(["assets/b.js", "assets/two%20words.svg"]);
  });
  it("has another name as soon as any file has another content, and the same one otherwise", () => {
    expect(release({ ".vite/manifest.json": "[]" }).release).toBe(release().release);
    const others = ["index.html", "offline.js", "assets/b.js"].map(
      (path) => release({ [path]: "x" }).release,
    );
    expect(new Set([release().release, ...others]).size).toBe(4);
  });
});

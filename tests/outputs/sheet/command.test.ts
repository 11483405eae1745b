import { describe, expect, it } from "vitest";
import { serialize } from "../../../src/document";
import { sheetFonts } from "../../../src/runner/fonts";
import { sheetsMain } from "../../../src/runner/sheets";
import {
  allFiles,
  cutterFile,
  pdfFile,
  sheetJob,
  solidFiles,
  solidKernel,
  solveHalf,
} from "../../../src/sheet";
import { SHEET } from "../../../src/ui/words/file";
import { ALL, jobOf } from "./baits";
import { scenarioOf } from "../../lib/scenarios";
import { fonts } from "./fonts";

const bait = scenarioOf("timed-sinker-70");
const text = serialize(bait);

/** Files of megabytes: compared as bytes, where `toEqual` would go through them one number at a time. */
const same = (a: Uint8Array | undefined, b: Uint8Array): boolean =>
  a !== undefined && Buffer.compare(a, b) === 0;

/** The command over files that exist only here. */
async function command(args: readonly string[], disk = new Map<string, Uint8Array>()) {
  let [out, err] = ["", ""];
  const exit = await sheetsMain(["bait.json", "--sheets", "out", ...args], {
    out: (words) => (out += words),
    err: (words) => (err += words),
    read: (file) => {
      if (file !== "bait.json") throw new Error("no such file");
      return new TextEncoder().encode(text);
    },
    fonts: () => fonts,
    folder: () => undefined,
    there: (path) => disk.get(path) ?? null,
    put: (path, bytes) => disk.set(path, bytes),
  });
  return { exit, out, err, disk };
}

describe("--sheets", () => {
  it("writes the files that the page gives, byte for byte, and keeps what is there", async () => {
    const { exit, out, disk } = await command([]);
    expect(exit).toBe(0);
    for (const paper of ["A4", "Letter"] as const) {
      const own = await pdfFile(jobOf(bait, { paper }));
      expect(same(disk.get(`out/${own.name}`), own.bytes), own.name).toBe(true);
      expect(out).toContain(own.name);
    }
    for (const key of ["side", "halves", "bib"] as const)
      for (const as of ["svg", "dxf"] as const) {
        const own = cutterFile(jobOf(bait), key, as)!;
        expect(same(disk.get(`out/${own.name}`), own.bytes), own.name).toBe(true);
      }
    const { compiled, drills } = jobOf(bait);
    const solids = solidFiles(bait, solveHalf(await solidKernel(), compiled.bait, drills));
    expect(solids).toHaveLength(3);
    for (const own of solids) expect(same(disk.get(`out/${own.name}`), own.bytes), own.name).toBe(true);

    const again = await command([], disk);
    expect(again.exit).toBe(0);
    expect(again.out).not.toContain("written");
    const [name] = [...disk.keys()];
    disk.set(name!, new Uint8Array([1]));
    const before = new Map(disk);
    const refused = await command(["--stations", "20,30"], disk);
    expect(refused.exit).toBe(2);
    expect(refused.err).toContain(name);
    expect(refused.err).toContain("--overwrite");
    expect([...disk.keys()]).toEqual([...before.keys()]);
    for (const [path, bytes] of before) expect(same(disk.get(path), bytes), path).toBe(true);
    const over = await command(["--overwrite"], disk);
    expect(over.exit).toBe(0);
    expect(over.out).toContain("written over");
    expect(disk.get(name!)!.length).toBeGreaterThan(1000);
  });

  it("writes them in German as the page does for those who read German, byte for byte", async () => {
    const { exit, disk } = await command(["--language", "de"]);
    expect(exit).toBe(0);
    await SHEET.ready("de");
    const told = (text: string): string => SHEET.in("de").of(text);
    const job = sheetJob(bait, fonts, ALL, null, undefined, told);
    const german = [await pdfFile(job), ...(await allFiles(job))];
    for (const own of german) expect(same(disk.get(`out/${own.name}`), own.bytes), own.name).toBe(true);
    const english = await command([]);
    expect([...english.disk.keys()]).toEqual([...disk.keys()]);
    for (const own of german)
      expect(same(english.disk.get(`out/${own.name}`), own.bytes), own.name).toBe(false);
  });

  it("refuses what it cannot do, in words", async () => {
    for (const [args, words] of [
      [["--json"], "leave out --json"],
      [["--measured", "90,100"], "95 to 105 mm"],
      [["--measured", "99"], "two numbers"],
      [["--language", "xx"], "knows en, de"],
      [["--stations", "10,500"], "lies off the body"],
      [["--box", "none.json"], "cannot read none.json"],
    ] as const) {
      const { exit, err, disk } = await command(args);
      expect({ args, exit }).toEqual({ args, exit: 2 });
      expect(err).toContain(words);
      expect(disk.size).toBe(0);
    }
  });

  it("has the page's fonts", () => {
    expect(sheetFonts().regular.bytes.length).toBe(fonts.regular.bytes.length);
  });
});

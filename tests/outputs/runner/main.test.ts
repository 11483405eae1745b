import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serialize } from "../../../src/document";
import type { Answer } from "../../../src/runner/answer";
import { main } from "../../../src/runner/main";
import { UsageError, parseOptions } from "../../../src/runner/options";
import { command } from "../../lib/command";
import { sampleScenario } from "../../lib/sample";
import type { Sample } from "../../lib/sample";

const short = (change: (draft: Sample) => void = () => undefined) =>
  serialize(
    sampleScenario((draft) => {
      draft.cadence = [
        { do: "settle", for_s: 0.2 },
        { do: "reel", speed_m_s: 0.8, for_s: 0.5 },
        { do: "reel", speed_m_s: 0.6, for_s: 0.2 },
        { do: "reel", speed_m_s: 0.8, for_s: 0.2 },
      ];
      change(draft);
    }),
  );
const files = { "a.json": short() };
const json = (args: readonly string[], some: Record<string, string> = files) => {
  const { exit, out, err } = command([...args, "--json"], some);
  expect({ exit, err }).toEqual({ exit: 0, err: "" });
  return JSON.parse(out) as Answer;
};

describe("the options", () => {
  it("read lists and ranges, both ends included", () => {
    expect(parseOptions(["f", "--reach-angles", "20:60:5"]).angles).toEqual([
      20, 25, 30, 35, 40, 45, 50, 55, 60,
    ]);
    expect(parseOptions(["f", "--reach-speeds", "0.6,0.9"]).speeds).toEqual([0.6, 0.9]);
    expect(parseOptions(["f", "--reach-speeds", "0.1:0.5:0.1"]).speeds).toEqual([0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(parseOptions(["f", "--reach-speeds=.5,0.8:1:0.1"]).speeds).toEqual([0.5, 0.8, 0.9, 1]);
    expect(parseOptions(["f", "--only", "run, statics"]).parts).toEqual(["statics", "run"]);
  });

  it.each([
    [[], /no scenario file/],
    [["a", "b"], /one scenario at a time/],
    [["a", "--fast"], /--fast/],
    [["a", "--only", "depth"], /found "depth"/],
    [["a", "--reach-angles", "20:60"], /from:to:step/],
    [["a", "--reach-angles", "60:20:5"], /rises/],
    [["a", "--reach-angles", "20:60:0"], /step above 0/],
    [["a", "--reach-angles", "200"], /outside 0 to 180 degrees/],
    [["a", "--reach-speeds", "fast"], /not a number/],
    [["a", "--reach-speeds", "0"], /outside 0.01 to 10/],
    [["a", "--reach-speeds", "0.01:10:0.0001"], /at most 1000/],
    [["a", "--csv"], /csv/],
  ])("refuse %j", (args, words) => {
    expect(() => parseOptions(args)).toThrow(UsageError);
    expect(() => parseOptions(args)).toThrow(words);
    expect(command(args, files).exit).toBe(2);
  });
});

describe("the JSON answer", () => {
  let whole: Answer;
  beforeAll(() => {
    whole = json(["a.json"]);
  });

  it("has the keys of the format page", () => {
    const page = readFileSync("docs/scenario-format.md", "utf8");
    const example = /## Headless[\s\S]*?```jsonc\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
    const documented = JSON.parse(example.replaceAll(/\s\/\/.*$/gm, "")) as Record<string, unknown>;
    const missing: string[] = [];
    const compare = (wanted: unknown, found: unknown, path: string) => {
      if (Array.isArray(wanted) && typeof wanted[0] === "object") {
        compare(wanted[0], Array.isArray(found) ? (found as unknown[])[0] : undefined, `${path}[0]`);
      } else if (typeof wanted === "object" && wanted !== null && !Array.isArray(wanted)) {
        for (const [key, one] of Object.entries(wanted)) {
          const has = typeof found === "object" && found !== null && Object.hasOwn(found, key);
          if (has) compare(one, (found as Record<string, unknown>)[key], `${path}.${key}`);
          else missing.push(`${path}.${key}`);
        }
      } else if (Array.isArray(wanted) !== Array.isArray(found)) missing.push(path);
    };
    expect(Object.keys(documented)).toEqual(Object.keys(whole));
    compare(documented, whole, "");
    expect(missing).toEqual([]);
  });

  it("has one reach row for each different reel speed, in the order of the cadence", () => {
    expect(whole.reach?.map((row) => row.speed_m_s)).toEqual([0.8, 0.6]);
    expect(whole.reach?.map((row) => row.lineOut_m)).toEqual([20, 20]);
    // Degrees go through radians and back: 42 within round-off.
    expect(whole.reach?.[0]?.bibAngle_deg).toBeCloseTo(42, 12);
  });

  it("has a row at 1 m/s where nothing is reeled, and no run where there is no cadence", () => {
    const none = json(["n.json", "--only", "reach,run"], {
      "n.json": short((draft) => void (draft.cadence = [])),
    });
    expect(none.reach?.map((row) => row.speed_m_s)).toEqual([1]);
    expect(none.run).toBeNull();
  });

  it("sweeps angles outside and speeds inside", () => {
    const rows = json([
      "a.json",
      "--only",
      "reach",
      "--reach-speeds",
      "0.6,0.9",
      "--reach-angles",
      "30:50:20",
    ]).reach;
    expect(rows?.map((row) => [Math.round(row.bibAngle_deg ?? NaN), row.speed_m_s])).toEqual([
      [30, 0.6],
      [30, 0.9],
      [50, 0.6],
      [50, 0.9],
    ]);
  });

  it("holds only the parts asked for", () => {
    expect(Object.keys(json(["a.json", "--only", "rise"]))).toEqual([
      "format",
      "version",
      "scenario",
      "rise",
    ]);
  });

  it("has null figures and a reason where it does not run", () => {
    const row = json(["a.json", "--only", "reach", "--reach-speeds", "0.05"]).reach?.[0];
    expect(row).toMatchObject({
      runs: false,
      depth_m: null,
      trim_deg: null,
      tension_N: null,
      lineAngle_deg: null,
    });
    expect(row?.why).toMatch(/\w/);
  });

  it("agrees with itself: a second run is the same, bit for bit", () => {
    expect(json(["a.json"])).toEqual(whole);
  });

  it("has a run whose lists belong together", () => {
    const run = whole.run;
    if (run === undefined || run === null) throw new Error("no run");
    const frames = run.time_s.length;
    expect([run.depth_m, run.pitch_deg, run.speed_m_s, run.tension_N].map((one) => one.length)).toEqual(
      Array(4).fill(frames),
    );
    expect(run.time_s[0]).toBe(0);
    expect(run.time_s.at(-1)).toBeCloseTo(run.duration_s, 9);
    expect(run.deepest_m).toBe(Math.max(...run.depth_m));
    expect(run.endTrim_deg).toBe(run.pitch_deg.at(-1));
  });
});

describe("the table", () => {
  it("says the verdicts in words, and shows no more than it knows", () => {
    const { exit, out, err } = command(["a.json"], files);
    expect({ exit, err }).toEqual({ exit: 0, err: "" });
    for (const words of [
      "Sample 80",
      "Statics: ",
      "chance of sinking",
      "Account",
      "Released under water: ",
      "Reach in a steady tow",
      "Run: ",
      "Bench: ",
    ]) {
      expect(out).toContain(words);
    }
    expect(out).not.toMatch(/NaN|undefined|null|Infinity|-0\.0|[ \t]\n/);
    for (const line of out.split("\n").filter((one) => !/Note|Warning/.test(one)))
      expect(line.length, line).toBeLessThanOrEqual(120);
  });
});

describe("the recording as CSV", () => {
  it("has one row a frame, units in the header, and whole numbers of columns", () => {
    const { exit, written, out } = command(
      ["a.json", "--only", "statics", "--json", "--csv", "run.csv"],
      files,
    );
    expect(exit).toBe(0);
    expect(Object.keys(JSON.parse(out) as object)).not.toContain("run");
    const rows = (written["run.csv"] ?? "")
      .trimEnd()
      .split("\r\n")
      .map((row) => row.split(","));
    expect(rows[0]?.slice(0, 7)).toEqual([
      "time_s",
      "depth_m",
      "pitch_deg",
      "speed_m_s",
      "tension_N",
      "eye_x_m",
      "eye_z_m",
    ]);
    expect(rows[0]).toContain("bib_m_Nm");
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows).toHaveLength(1 + Math.round(1.1 * 60) + 1);
    for (const row of rows.slice(1)) {
      expect(row.every((cell) => cell === "" || Number.isFinite(Number(cell)))).toBe(true);
      // Depth of the tie eye, down positive, and its height are one number.
      expect(Number(row[1])).toBeCloseTo(-Number(row[6]), 9);
    }
  });

  it("is refused without a cadence", () => {
    const { exit, err } = command(["n.json", "--csv", "x"], {
      "n.json": short((draft) => void (draft.cadence = [])),
    });
    expect(exit).toBe(2);
    expect(err).toMatch(/no cadence/);
  });
});

describe("names that a terminal would obey", () => {
  // Escape, bell, a line break, the 8-bit control sequence introducer, an override of direction, DEL.
  const odd = "a\u001b[2Jb\u0007c\nd\u009be\u202ef\u007f";
  // oxlint-disable-next-line no-control-regex -- what a terminal obeys is what is looked for
  const obeyed = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
  const named = short((draft) => {
    draft.name = odd;
    draft.bait.coats[0]!.name = odd;
  });

  it("are written out in the table, on their line", () => {
    const { exit, out } = command(["n.json", "--only", "statics"], { "n.json": named });
    expect(exit).toBe(0);
    expect(out).not.toMatch(obeyed);
    expect(out.split("\n")[0]).toBe("a\\u001b[2Jb\\u0007c\\u000ad\\u009be\\u202ef\\u007f");
    expect(out).toContain("  a\\u001b[2Jb\\u0007c\\u000ad\\u009be\\u202ef\\u007f ");
  });

  it("are escaped in the JSON, which reads back as the same name", () => {
    const { out } = command(["n.json", "--only", "statics", "--json"], { "n.json": named });
    expect(out.trimEnd()).not.toMatch(obeyed);
    expect((JSON.parse(out) as Answer).scenario).toBe(odd);
  });

  it("are written out in what is said of a bad file, and in its name", () => {
    const bad = JSON.stringify({ ...(JSON.parse(named) as object), [odd]: 1, water: odd });
    const { err } = command([`${odd}.json`], { [`${odd}.json`]: bad });
    expect(err).not.toMatch(obeyed);
    expect(err.trimEnd().split("\n")).toHaveLength(2);
    expect(command([`${odd}.json`]).err.split("\n")[0]).not.toMatch(obeyed);
    expect(command(["--only", odd, "a"]).err.split("\n")[0]).not.toMatch(obeyed);
  });
});

describe("what goes wrong", () => {
  it("a bad file: exit 2, its problems on standard error, nothing on standard output", () => {
    const { exit, out, err } = command(["b.json", "--json"], {
      "b.json": '{"format": "trimwright/scenario", "version": 1}',
    });
    expect({ exit, out }).toEqual({ exit: 2, out: "" });
    expect(err).toMatch(/b\.json: bait .*found nothing/);
    expect(command(["none.json"]).err).toMatch(/cannot read none\.json/);
    expect(command(["none.json"]).exit).toBe(2);
  });

  it("angles for a bait without a bib: exit 2", () => {
    const bare = short((draft) => delete (draft.bait as { bib?: unknown }).bib);
    expect(command(["n.json", "--reach-angles", "30"], { "n.json": bare })).toMatchObject({
      exit: 2,
      out: "",
    });
  });

  it("a fault while answering: exit 1", () => {
    let err = "";
    const failing = main(["a.json", "--csv", "x", "--only", "water"], {
      out: () => undefined,
      err: (text) => (err += text),
      read: () => Buffer.from(files["a.json"]),
      tryToWrite: () => undefined,
      write: () => {
        throw new Error("disk full");
      },
    });
    expect({ failing, err }).toEqual({ failing: 1, err: "answer: disk full\n" });
  });

  it("a table that cannot be written: exit 2, before the run", () => {
    const { exit, out, err, written } = command(["a.json", "--csv", "/nowhere/run.csv"], files);
    expect({ exit, out, written }).toEqual({ exit: 2, out: "", written: {} });
    expect(err).toMatch(/^answer: --csv: cannot write \/nowhere\/run\.csv: no such folder\. Name a file/);
    const over = command(["a.json", "--csv", "./a.json"], files);
    expect(over).toMatchObject({ exit: 2, out: "", written: {} });
    expect(over.err).toMatch(/the scenario file itself/);
  });

  it("a file that is no UTF-8: exit 2, and where", () => {
    const { exit, out, err } = command(["a.json"], { "a.json": Buffer.from([0x7b, 0x0a, 0x22, 0xe4, 0x22]) });
    expect({ exit, out }).toEqual({ exit: 2, out: "" });
    expect(err).toBe(
      "a.json: The file (line 2, column 2): found the byte E4, which begins no character of UTF-8 here; " +
        "allowed: text in UTF-8. Open it in a text editor, save it as UTF-8, and open it again.\n",
    );
  });

  it("hundreds of problems: the first twenty, and how many more", () => {
    const many = Object.fromEntries(Array.from({ length: 300 }, (_, i) => [`key${i}`, i]));
    const { err } = command(["a.json"], {
      "a.json": JSON.stringify({ ...(JSON.parse(files["a.json"]) as object), ...many }),
    });
    const lines = err.trimEnd().split("\n");
    expect(lines).toHaveLength(21);
    expect(lines.at(-1)).toBe("a.json: and 280 more");
  });

  it("--schema and --help need no file", () => {
    expect(JSON.parse(command(["--schema"]).out)).toMatchObject({ title: "Trimwright scenario, version 1" });
    expect(command(["--help"])).toMatchObject({ exit: 0, err: "" });
  });
});

describe("the command itself", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "answer-"));
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });
  const run = (args: readonly string[], input = "") =>
    spawnSync(process.execPath, ["--import", "tsx", "src/runner/cli.ts", ...args], {
      encoding: "utf8",
      input,
      maxBuffer: 1e8,
    });

  it("answers a file, writes the CSV, and keeps the streams apart", () => {
    const file = join(folder, "a.json");
    writeFileSync(file, files["a.json"]);
    const csv = join(folder, "run.csv");
    const { status, stdout, stderr } = run([file, "--json", "--csv", csv]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(JSON.parse(stdout)).toEqual(json(["a.json"]));
    expect(readFileSync(csv, "utf8")).toMatch(/^time_s,/);
  });

  it("leaves nothing behind, and an older table whole, where it does not come to write", () => {
    const bad = join(folder, "bad.json");
    writeFileSync(
      bad,
      short((draft) => void (draft.cadence = [])),
    );
    const older = join(folder, "older.csv");
    writeFileSync(older, "older");
    for (const csv of [join(folder, "none/run.csv"), folder]) {
      const { status, stdout, stderr } = run([join(folder, "a.json"), "--csv", csv]);
      expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
      expect(stderr).toContain(`cannot write ${csv}`);
    }
    expect(run([bad, "--csv", older]).status).toBe(2);
    expect(readFileSync(older, "utf8")).toBe("older");
  });

  it("reads standard input, and exits 2 on a bad one", () => {
    expect(run(["-", "--only", "water", "--json"], files["a.json"])).toMatchObject({ status: 0, stderr: "" });
    const bad = run(["-"], "{");
    expect(bad).toMatchObject({ status: 2, stdout: "" });
    expect(bad.stderr).toMatch(/line 1, column 2/);
  });
});

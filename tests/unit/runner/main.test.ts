import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serialize } from "../../../src/document";
import type { Answer } from "../../../src/runner/answer";
import { main } from "../../../src/runner/main";
import { UsageError, parseOptions } from "../../../src/runner/options";
import { attitudeWords, floatWords, floats, riseWords } from "../../../src/runner/words";
import { sampleScenario } from "../document/sample";
import type { Sample } from "../document/sample";

/** The command in this process, over files that exist only here. */
function command(args: readonly string[], files: Record<string, string> = {}) {
  const written: Record<string, string> = {};
  let out = "";
  let err = "";
  const exit = main(args, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    read: (file) => {
      const text = files[file];
      if (text === undefined) throw new Error("no such file");
      return text;
    },
    write: (file, text) => (written[file] = text),
  });
  return { exit, out, err, written };
}

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

describe("the words of the verdict", () => {
  it("float, suspend, sink: ±0.05 g decides", () => {
    expect([0.051, 0.05, 0, -0.05, -0.051].map(floats)).toEqual([
      "floats",
      "suspends",
      "suspends",
      "suspends",
      "sinks",
    ]);
    expect(floatWords(0.37)).toBe("floats by 0.37 g");
    expect(floatWords(-1.5)).toBe("sinks by 1.50 g");
    expect(floatWords(-0.02)).toBe("suspends (0.02 g heavy, within ±0.05 g)");
  });

  it("attitude", () => {
    expect([null, 0.4, -6, 12, 81, -60, 170].map(attitudeWords)).toEqual([
      "rests in any attitude",
      "rests level",
      "rests nose-down by 6.0°",
      "rests nose-up by 12.0°",
      "hangs tail-down at 81.0°",
      "hangs nose-down at 60.0°",
      "rests belly-up, nose up",
    ]);
  });

  it("rise", () => {
    expect(riseWords({ speed_mm_s: 71, secondsPer300mm: 4.2 })).toBe("rises 300 mm in 4.2 s");
    expect(riseWords({ speed_mm_s: -300, secondsPer300mm: 1 })).toBe("sinks 300 mm in 1.0 s");
    expect(riseWords({ speed_mm_s: 0, secondsPer300mm: null })).toBe("stands");
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
      read: () => files["a.json"],
      write: () => {
        throw new Error("disk full");
      },
    });
    expect({ failing, err }).toEqual({ failing: 1, err: "answer: disk full\n" });
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
  }, 60_000);

  it("reads standard input, and exits 2 on a bad one", () => {
    expect(run(["-", "--only", "water", "--json"], files["a.json"])).toMatchObject({ status: 0, stderr: "" });
    const bad = run(["-"], "{");
    expect(bad).toMatchObject({ status: 2, stdout: "" });
    expect(bad.stderr).toMatch(/line 1, column 2/);
  }, 60_000);
});

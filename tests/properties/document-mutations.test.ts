import { spawnSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fieldAt, pathSteps, pathText, scenarioJsonSchema, valueAt } from "../../src/document";
import { LARGEST_TEXT } from "../../src/document/json";
import { random as seeded } from "../../src/model/base";
import { main } from "../../src/runner/main";
import { sample } from "../unit/document/sample";

/**
 * Three hundred spoilt files: each must be refused with exit 2, nothing on standard output, and a message that
 * has the place and a remedy. What is spoilt is drawn with a fixed seed from the scenarios of the project.
 */

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

interface Spoilt {
  readonly what: string;
  readonly text: string;
  /** The message names this path; "" where the file as a whole is at fault. */
  readonly path: string;
}

const originals: readonly Json[] = [
  sample() as Json,
  ...readdirSync("scenarios").map(
    (name) => JSON.parse(readFileSync(join("scenarios", name), "utf8")) as Json,
  ),
];

const random = seeded(20_260_101);
const pick = <T>(list: readonly T[]): T => {
  const one = list[Math.floor(random.uniform() * list.length)];
  if (one === undefined) throw new Error("nothing to pick from");
  return one;
};

/** Paths of all values that pass the test, expectations left out: their `value` may be anything. */
function places(root: Json, test: (value: Json, path: Path) => boolean): Path[] {
  const out: Path[] = [];
  const walk = (value: Json, path: Path) => {
    if (path[0] === "expect") return;
    if (path.length > 0 && test(value, path)) out.push(path);
    if (Array.isArray(value))
      value.forEach((one, i) => {
        walk(one, [...path, i]);
      });
    else if (typeof value === "object" && value !== null) {
      for (const [key, one] of Object.entries(value)) walk(one, [...path, key]);
    }
  };
  walk(root, []);
  return out;
}

/** A deep copy with the value at a path replaced. */
function put(root: Json, path: Path, value: Json): Json {
  const copy = structuredClone(root);
  const parent = valueAt(copy, path.slice(0, -1)) as Record<string | number, Json>;
  parent[path.at(-1) ?? ""] = value;
  return copy;
}

const isNumber = (value: Json) => typeof value === "number";
const isObject = (value: Json) => typeof value === "object" && value !== null && !Array.isArray(value);
const text = (value: Json) => JSON.stringify(value, null, 2);

/** The text with one number replaced by a word that JSON has not. */
function withWord(root: Json, path: Path, word: string): string {
  const mark = "<<<mark>>>";
  return text(put(root, path, mark)).replace(JSON.stringify(mark), word);
}

interface Schema {
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  oneOf?: Schema[];
}

/** Keys that the published JSON Schema requires of the group at a path. */
function required(root: Json, path: Path): string[] {
  let schemas: Schema[] = [scenarioJsonSchema()];
  for (const step of path) {
    schemas = schemas.flatMap((one) => {
      const next = typeof step === "number" ? one.items : one.properties?.[step];
      return next === undefined ? [] : (next.oneOf ?? [next]);
    });
  }
  const group = valueAt(root, path) as Record<string, Json>;
  const fitting = schemas.filter((one) => Object.keys(group).every((key) => key in (one.properties ?? {})));
  return fitting[0]?.required ?? [];
}

const kinds: Record<string, () => Spoilt> = {
  "another type": () => {
    const root = pick(originals);
    const path = pick(places(root, (_, at) => at[0] !== "format" && at[0] !== "version"));
    const old = valueAt(root, path) as Json;
    const other = pick<Json>(
      ([3, "seven", true, null, { odd: 1 }, []] as Json[]).filter(
        (one) => typeof one !== typeof old || Array.isArray(one) !== Array.isArray(old) || one === null,
      ),
    );
    return {
      what: `${pathText(path)} = ${JSON.stringify(other)}`,
      text: text(put(root, path, other)),
      path: pathText(path),
    };
  },
  "out of range": () => {
    const root = pick(originals);
    const path = pick(places(root, (value, at) => isNumber(value) && at[0] !== "version"));
    const field = fieldAt(pathText(path), root as never);
    if (field?.kind !== "number") throw new Error(`${pathText(path)} has no number field`);
    const value = pick([
      field.min - 1,
      field.min - 1e-6,
      field.max + 1,
      field.max * 10 + 1,
      -1e12,
      1e12,
      1.7e308,
      -1.7e308,
    ]);
    return { what: `${pathText(path)} = ${value}`, text: text(put(root, path, value)), path: pathText(path) };
  },
  "a missing key": () => {
    const root = pick(originals);
    const path = pick([[], ...places(root, (value, at) => isObject(value) && required(root, at).length > 0)]);
    const key = pick(required(root, path));
    const copy = structuredClone(root);
    delete (valueAt(copy, path) as Record<string, Json>)[key];
    return { what: `no ${pathText([...path, key])}`, text: text(copy), path: pathText([...path, key]) };
  },
  "an extra key": () => {
    const root = pick(originals);
    const path = [
      ...pick([[], ...places(root, isObject)]),
      pick(["lenght_mm", "colour", "constructor", "prototype", "toString", "x y", "mass"]),
    ];
    return { what: `extra ${pathText(path)}`, text: text(put(root, path, 1)), path: pathText(path) };
  },
  "no number": () => {
    const root = pick(originals);
    const path = pick(places(root, (value, at) => isNumber(value) && at[0] !== "version"));
    const word = pick([
      "NaN",
      "Infinity",
      "-Infinity",
      "1e999",
      "-1e400",
      "0x10",
      "01",
      "1.",
      ".5",
      "+1",
      "1,5",
      "12mm",
      "undefined",
    ]);
    // After a decimal comma the rest reads as the next entry: the place is then the group or the list.
    return {
      what: `${pathText(path)} = ${word}`,
      text: withWord(root, path, word),
      path: word === "1,5" ? "" : pathText(path),
    };
  },
  "another version": () => {
    const root = pick(originals);
    const [path, value] = pick<[string, Json]>([
      ["version", 0],
      ["version", 2],
      ["version", 1.5],
      ["version", "1"],
      ["version", null],
      ["format", "trimwright/answer"],
      ["format", 1],
      ["format", null],
    ]);
    return { what: `${path} = ${JSON.stringify(value)}`, text: text(put(root, [path], value)), path };
  },
  "no JSON": () => {
    const whole = text(pick(originals));
    for (;;) {
      const at = Math.floor(random.uniform() * (whole.length - 2));
      const [what, spoilt] = pick<[string, string]>([
        [`cut at ${at}`, whole.slice(0, at)],
        [`without the character at ${at}`, whole.slice(0, at) + whole.slice(at + 1)],
        [`a stray bracket at ${at}`, `${whole.slice(0, at)}{${whole.slice(at)}`],
        [`a control character at ${at}`, `${whole.slice(0, at)}\u0001${whole.slice(at)}`],
        ["empty", ""],
        ["a web page", "<!doctype html><title>404</title>"],
        ["a list", `[${whole}]`],
        ["text", JSON.stringify(whole)],
        ["a number", "12"],
        ["null", "null"],
        ["twice", whole + whole],
        ["too long", `${whole}${" ".repeat(LARGEST_TEXT)}`],
        ["too deep", "[".repeat(5000)],
        ["a comment", `// my bait\n${whole}`],
      ]);
      if (!["a list", "text", "a number", "null", "too long"].includes(what) && parses(spoilt)) continue;
      return { what, text: spoilt, path: "" };
    }
  },
  "a key twice": () => {
    const root = pick(originals);
    const key = pick(Object.keys(root as object));
    const whole = text(root);
    return {
      what: `${key} twice`,
      text: `${whole.slice(0, whole.lastIndexOf("}"))}, ${JSON.stringify(key)}: 1}`,
      path: key,
    };
  },
  "a poisoned prototype": () => {
    const root = pick(originals);
    const path = pick([[], ...places(root, isObject)]);
    const marked = text(put(root, [...path, "<<<mark>>>"], { polluted: true }));
    return {
      what: `__proto__ in ${pathText(path)}`,
      text: marked.replace("<<<mark>>>", "__proto__"),
      path: pathText([...path, "__proto__"]),
    };
  },
  "what does not fit together": () => {
    const root = pick(originals);
    const options: [string, Json | undefined][] = [
      ["bait.top[0][0]", 1],
      ["bait.bottom[1][0]", 0],
      ["bait.halfBreadth[0][0]", 0.5],
      ["bait.length_mm", 7],
      ["bait.body", { material: "unobtainium" }],
      ["bait.body", {}],
      ["bait.coats[0]", { name: "clear", density_g_ml: 1.1 }],
      ["bait.coats[0]", { name: "clear", density_g_ml: 1.1, mass_g: 1, thickness_mm: 0.1 }],
      ["bait.wires[0].material", "stainles stele"],
      ["bait.chambers[0].to_mm", 0],
      ["bait.chambers[0].tall_mm", 900],
      ["bait.chambers[0].balls.count", 200],
      ["bait.ballast[0].hole_ml", 900],
      ["tackle.line.material", "string"],
      ["tackle.lineOut_m", 0.01],
      ["water.depth_m", 0.01],
      ["cadence[1]", { do: "reel", speed_m_s: 1 }],
      ["cadence[1]", { do: "reel", speed_m_s: 1, for_s: 1, length_m: 1 }],
      ["cadence[0]", { do: "release", for_s: 1 }],
      ["bench[0].with", ["the cat"]],
    ];
    for (;;) {
      const [path, value] = pick(options);
      const steps = pathSteps(path);
      if (valueAt(root, steps.slice(0, -1)) === undefined || value === undefined) continue;
      if (path === "cadence[0]" && !JSON.stringify(valueAt(root, ["cadence", 1]) ?? "").includes("reel"))
        continue;
      if (valueAt(root, steps) === undefined && path !== "bait.ballast[0].hole_ml") continue;
      // Some are seen elsewhere: a length at the curves' ends, a hole in the body as a whole.
      const seen = /length_mm|hole_ml|cadence\[0\]|bench/.test(path)
        ? ""
        : path.replace(/\[0\]$|\.tall_mm$/, "");
      return { what: `${path} = ${JSON.stringify(value)}`, text: text(put(root, steps, value)), path: seen };
    }
  },
};

function parses(spoilt: string): boolean {
  try {
    JSON.parse(spoilt);
    return true;
  } catch {
    return false;
  }
}

const COUNT = 300;
const names = Object.keys(kinds);
const spoiltFiles = Array.from({ length: COUNT }, (_, i) => {
  const name = names[i % names.length] ?? "";
  const make = kinds[name];
  if (make === undefined) throw new Error(`no kind ${name}`);
  return { name, ...make() };
});

const command = (file: string) => {
  let out = "";
  let err = "";
  const exit = main(["bad.json", "--json"], {
    out: (words) => (out += words),
    err: (words) => (err += words),
    read: () => file,
    write: () => undefined,
  });
  return { exit, out, err };
};

describe(`${COUNT} spoilt files`, () => {
  it("start from files that are good", () => {
    for (const good of originals) {
      expect(command(text(put(good, ["cadence"], [])))).toMatchObject({ exit: 0, err: "" });
    }
  });

  it.each(spoiltFiles.map((one, i) => [`${i}: ${one.name}: ${one.what}`, one] as const))(
    "%s",
    (_, { path, text: file }) => {
      const { exit, out, err } = command(file);
      expect({ exit, out }, err).toEqual({ exit: 2, out: "" });
      expect(err).toContain(path === "" ? "bad.json: " : `bad.json: ${path}`);
      // Place, what was found, what is allowed, and a remedy: a sentence that ends the message.
      expect(err.split("\n")[0]).toMatch(/^bad\.json: .+: .{3,}\. .{8,}[.?!]$/);
      expect(err).not.toMatch(/found undefined|allowed: undefined|\[object|NaN to| at .*\.ts:/);
      expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    },
  );

  it("are refused by the command itself too", () => {
    // One process each is slow: one of every fifth kind stands for them.
    for (const { text: file, name } of spoiltFiles.slice(0, 10).filter((_, i) => i % 5 === 0)) {
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        ["--import", "tsx", "src/runner/cli.ts", "-"],
        {
          input: file,
          encoding: "utf8",
        },
      );
      expect({ status, stdout, name }).toEqual({ status: 2, stdout: "", name });
      expect(stderr).toMatch(/^-: /);
    }
  });
});

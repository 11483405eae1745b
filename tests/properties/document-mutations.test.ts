import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { fieldAt, pathSteps, pathText, valueAt } from "../../src/document";
import { LARGEST_TEXT } from "../../src/document/json";
import { main } from "../../src/runner/main";
import {
  originals,
  random,
  pick,
  places,
  put,
  isNumber,
  isObject,
  text,
  withWord,
  required,
} from "./spoiling";
import type { Json, Spoilt } from "./spoiling";

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

/** How a text of the file looks in other encodings than UTF-8. */
const encodings: Record<string, (whole: string) => Uint8Array> = {
  "UTF-16 LE": (whole) => Buffer.from(whole, "utf16le"),
  "UTF-16 LE with a mark": (whole) => Buffer.from(`\uFEFF${whole}`, "utf16le"),
  "UTF-16 BE": (whole) => Buffer.from(whole, "utf16le").swap16(),
  "UTF-16 BE with a mark": (whole) => Buffer.from(`\uFEFF${whole}`, "utf16le").swap16(),
  "UTF-32 LE": (whole) => utf32(whole),
  "UTF-32 LE with a mark": (whole) => utf32(`\uFEFF${whole}`),
  "UTF-32 BE": (whole) => Buffer.from(utf32(whole)).swap32(),
  "Latin 1": (whole) => Buffer.from(`${whole.slice(0, 1)}"näme": 1,${whole.slice(1)}`, "latin1"),
};

function utf32(whole: string): Buffer {
  const characters = Array.from(whole);
  const out = Buffer.alloc(4 * characters.length);
  characters.forEach((one, i) => out.writeUInt32LE(one.codePointAt(0) ?? 0, 4 * i));
  return out;
}

/** No character of UTF-8: stray and missing tails, longer forms than needed, halves of characters, beyond Unicode's end. */
const noCharacters: readonly (readonly number[])[] = [
  ...[
    [0x80],
    [0xbf],
    [0xc0, 0x80],
    [0xc1, 0xbf],
    [0xc3],
    [0xe0, 0x80, 0x80],
    [0xe2, 0x82],
    [0xed, 0xa0, 0x80],
  ],
  ...[
    [0xf0, 0x80, 0x80, 0x80],
    [0xf0, 0x9f, 0x98],
    [0xf4, 0x90, 0x80, 0x80],
    [0xf5],
    [0xfe],
    [0xff],
    [0xe9, 0x20],
  ],
];

Object.assign(kinds, {
  "another encoding": () => {
    const [what, encode] = pick(Object.entries(encodings));
    return { what, text: encode(text(pick(originals))), path: "" };
  },
  "bytes that are no character": () => {
    const whole = Buffer.from(text(pick(originals)));
    const at = Math.floor(random.uniform() * whole.length);
    const odd = pick(noCharacters);
    return {
      what: `${odd.map((byte) => byte.toString(16)).join(" ")} at ${at}`,
      text: Buffer.concat([whole.subarray(0, at), Buffer.from(odd), whole.subarray(at)]),
      path: "",
    };
  },
  "half of a character": () => {
    const root = pick(originals);
    const half = pick(["\\ud83d", "\\ude00", "\\ude00\\ud83d", "\\ud83d\\ud83d\\ude00"]);
    return { what: half, text: withWord(root, ["name"], `"a${half}b"`), path: "name" };
  },
  "a number too large": () => {
    const root = pick(originals);
    const path = pick(places(root, (value, at) => isNumber(value) && at[0] !== "version"));
    const word = pick([
      `1${"0".repeat(400)}`,
      `-${"9".repeat(100_000)}`,
      `1e${"9".repeat(50)}`,
      "1e309",
      "-1e+400",
      "123456789e999999999",
    ]);
    const what = `${pathText(path)} = ${word.slice(0, 20)}`;
    return { what, text: withWord(root, path, word), path: pathText(path) };
  },
  "brackets without end": () => {
    const deep = 10 ** (1 + Math.floor(random.uniform() * 5));
    const [what, word] = pick<[string, string]>([
      ["lists", "[".repeat(25 + deep) + "]".repeat(25 + deep)],
      ["open lists", "[".repeat(25 + deep)],
      ["groups", '{"a":'.repeat(25 + deep) + "1" + "}".repeat(25 + deep)],
      ["open groups", '{"a":'.repeat(25 + deep)],
      ["both", '[{"a":'.repeat(25 + deep)],
    ]);
    return { what: `${deep} ${what}`, text: withWord(pick(originals), ["notes"], word), path: "notes" };
  },
  "a key twice inside": () => {
    const root = pick(originals);
    const path = pick(places(root, (value) => isObject(value) && Object.keys(value as object).length > 0));
    const key = pick(Object.keys(valueAt(root, path) as object));
    // The same key once more, plain or with an escape in it: both are one key.
    const [first = "", ...rest] = key;
    const again = pick([key, `\\u${first.charCodeAt(0).toString(16).padStart(4, "0")}${rest.join("")}`]);
    const marked = text(put(root, [...path, "<<<mark>>>"], 1));
    return {
      what: `${again} twice in ${pathText(path)}`,
      text: marked.replace("<<<mark>>>", again),
      path: pathText([...path, key]),
    };
  },
  "a key of every object": () => {
    const root = pick(originals);
    const path = pick([[], ...places(root, isObject)]);
    const [written, key] = pick([
      ["\\u005f\\u005fproto\\u005f\\u005f", "__proto__"],
      ["__proto\\u005f_", "__proto__"],
      ...["constructor", "hasOwnProperty", "valueOf", "__defineGetter__", "toJSON", "length", ""].map(
        (one) => [one, one],
      ),
    ] as [string, string][]);
    const marked = text(put(root, [...path, "<<<mark>>>"], { polluted: true }));
    return {
      what: `${written} in ${pathText(path)}`,
      text: marked.replace("<<<mark>>>", () => written),
      path: pathText([...path, key]),
    };
  },
  "thousands of keys": () => {
    const root = pick(originals);
    const path = pick([[], ...places(root, isObject)]);
    const more = Object.fromEntries(Array.from({ length: 3000 }, (_, i) => [`key${i}`, i]));
    const group = { ...(valueAt(root, path) as Record<string, Json>), ...more };
    return {
      what: `in ${pathText(path)}`,
      text: text(path.length === 0 ? group : put(root, path, group)),
      path: pathText([...path, "key0"]),
    };
  },
} satisfies typeof kinds);

function parses(spoilt: string): boolean {
  try {
    JSON.parse(spoilt);
    return true;
  } catch {
    return false;
  }
}

const COUNT = 1000;
const names = Object.keys(kinds);
const spoiltFiles = Array.from({ length: COUNT }, (_, i) => {
  const name = names[i % names.length] ?? "";
  const make = kinds[name];
  if (make === undefined) throw new Error(`no kind ${name}`);
  return { name, ...make() };
});

const command = (file: string | Uint8Array) => {
  let out = "";
  let err = "";
  const exit = main(["bad.json", "--json"], {
    out: (words) => (out += words),
    err: (words) => (err += words),
    read: () => Buffer.from(file),
    tryToWrite: () => undefined,
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

import { readFileSync } from "node:fs";
import { transform, type Plugin } from "esbuild";
import { compile, compileModule } from "svelte/compiler";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Copy } from "./copy";

/**
 * A made-up view is added to a copy of the sources by the recipe of DEVELOPERS.md: a folder and one line in the list. The
 * page's own tabs and frame show it, in a page without a browser.
 */
const INDEX = `
import { both } from "../view";
import type { View } from "../view";

export const inch: View = {
  key: "inch",
  keys: [{ keys: "i", does: "does.inch.none" }],
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
`;
const STATE = `
import { aText, keptWith, Later } from "../../state";
import type { App } from "../../state";

class InchState {
  note = $state("");
  readonly doubled = new Later<number>();
  readonly app: App;
  readonly length = $derived.by(() => this.app.work.scenario.bait.length_mm);
  readonly depth = $derived.by(() => this.app.work.scenario.water.depth_m);

  constructor(app: App) {
    this.app = app;
    app.beside.keep<Pick<InchState, "note">>("inch", "work", this, { note: aText });
  }

  follow(): void {
    this.doubled.follow(() => this.depth, (depth) => Promise.resolve(2 * depth));
  }
}

export const inchOf = keptWith((app) => new InchState(app));
`;
const MAIN = `
<script lang="ts">
  import { app } from "../../state";
  import type { Figure } from "../../state";
  import Readout from "../parts/Readout.svelte";
  import { inchOf } from "./state.svelte";

  const inch = inchOf(app());
  inch.follow();
  const figure = $derived<Figure>({
    key: "inch",
    label: "Length",
    value: inch.length,
    unit: "mm",
    digits: 0,
    signed: false,
    words: "from end to end",
    why: () => ({
      title: "Length",
      value: "as drawn",
      meaning: "made up",
      formula: "L",
      inputs: [],
      source: "the drawing",
    }),
  });
  function shown(): string {
    if (inch.note === "break") throw new Error("made to break");
    return inch.note;
  }
</script>

<h2>Made up</h2>
<Readout {figure} />
<p class="twice">{inch.doubled.value ?? "–"}{inch.doubled.stale ? " (old)" : ""}</p>
<p class="note">{shown()}</p>
`;
const SIDE = `
<script lang="ts">
  import { app } from "../../state";
  import NumberField from "../parts/NumberField.svelte";
  import { inchOf } from "./state.svelte";

  const inch = inchOf(app());
  const { work } = app();
</script>

<NumberField
  label="Depth of the water"
  unit="m"
  value={work.scenario.water.depth_m}
  slider={{ min: 0.5, max: 10, step: 0.5 }}
  min={0}
  max={100}
  above
  onturn={(value) =>
    work.turn(
      { id: "depth", label: "depth", write: (from, depth_m) => ({ ...from, water: { ...from.water, depth_m } }) },
      value,
    )}
  onsettle={() => work.settle()}
/>
<input class="note" bind:value={inch.note} />
`;

/** What the page is made of, with its tabs and the frame round the open view alone. */
const PAGE = `
<script lang="ts">
  import ViewFrame from "./src/ui/shell/ViewFrame.svelte";
  import ViewTabs from "./src/ui/shell/ViewTabs.svelte";
  import { provideApp } from "./src/ui/state";
  import { VIEWS } from "./src/ui/views";

  const { app } = $props();
  provideApp(app);
  const open = $derived(VIEWS.find((one) => one.key === app.view.key));
</script>

<ViewTabs />
{#if open !== undefined}{#key open.key}<ViewFrame view={open} />{/key}{/if}
`;
const ENTRY = `
import { flushSync, mount } from "svelte";
import { parseScenario } from "./src/document";
import { App } from "./src/ui/state";
import { VIEWS } from "./src/ui/views";
import { PAGE } from "./src/ui/words/page";
import Page from "./Page.svelte";

export function start(text: string, keeping: object) {
  const read = parseScenario(text);
  if (!read.ok) throw new Error("the example is refused");
  const app = new App({
    scenario: read.scenario,
    kept: null,
    keeping: keeping as never,
    views: VIEWS.map((one) => one.key),
    first: "inch",
    hash: "#inch",
    store: null,
    width: 1440,
    dark: false,
    calm: true,
  });
  mount(Page, { target: document.body, props: { app } });
  return app;
}
export const labels = () => VIEWS.map((one) => PAGE.in("en").tell("view." + one.key));
export const flush = () => flushSync();
`;
type App = import("../../src/ui/state").App;
interface Program {
  start(text: string, keeping: object): App;
  labels(): string[];
  flush(): void;
}

/** The package has no types of its own: what the test needs of it. */
const PACKAGE: string = "jsdom";
const { JSDOM } = (await import(/* @vite-ignore */ PACKAGE)) as {
  readonly JSDOM: new (html: string, options: object) => { readonly window: Window & typeof globalThis };
};

/** Components and their modules; what other views would load later stays out. */
const svelte: Plugin = {
  name: "svelte",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /./ }, ({ kind, importer, path }) =>
      kind === "dynamic-import" && !importer.includes("/views/inch/") ? { path, external: true } : null,
    );
    onLoad({ filter: /\.svelte$/ }, ({ path }) => {
      const { js } = compile(readFileSync(path, "utf8"), { filename: path, css: "external" });
      return { contents: js.code };
    });
    onLoad({ filter: /\.svelte\.[jt]s$/ }, async ({ path }) => {
      const { code } = await transform(readFileSync(path, "utf8"), {
        loader: path.endsWith("ts") ? "ts" : "js",
        target: "esnext",
        tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
      });
      return { contents: compileModule(code, { filename: path }).js.code };
    });
  },
};

describe("a made-up view, added by the recipe", () => {
  const copy = new Copy("view");
  const errors: unknown[] = [];
  const dom = new JSDOM("<!doctype html><html><body></body></html>", {
    url: "http://127.0.0.1/",
    runScripts: "outside-only",
    pretendToBeVisual: true,
  });
  const { window } = dom;
  let program: Program;
  let app: App;

  beforeAll(async () => {
    copy.write("src/ui/views/inch/index.ts", INDEX);
    copy.write("src/ui/views/inch/state.svelte.ts", STATE);
    copy.write("src/ui/views/inch/Main.svelte", MAIN);
    copy.write("src/ui/views/inch/Side.svelte", SIDE);
    copy.put("src/ui/views/index.ts", 'import { float } from "./float";', '\nimport { inch } from "./inch";');
    copy.put("src/ui/views/index.ts", "readonly View[] = [draw, weigh", ", inch");
    copy.put(
      "src/ui/words/page/en.ts",
      '"view.draw": "Draw",',
      '"view.inch": "Inch", "answers.inch": "How long is the bait in inches?",',
    );
    copy.put(
      "src/ui/words/page/de.ts",
      '"view.draw": "Zeichnen",',
      '"view.inch": "Zoll", "answers.inch": "Wie lang ist der Köder in Zoll?",',
    );
    copy.put("src/ui/words/windows/en.ts", '"does.play": "play or pause",', '"does.inch.none": "nothing",');
    copy.write("Page.svelte", PAGE);
    const script = await copy.bundle(ENTRY, "page.js", {
      platform: "browser",
      format: "iife",
      globalName: "program",
      conditions: ["svelte"],
      define: {
        "import.meta.glob": "noFiles",
        "import.meta.url": "location.href",
        "import.meta.env": "{}",
      },
      banner: { js: "const noFiles = () => ({});" },
      plugins: [svelte],
    });
    Object.assign(window, { structuredClone, reportError: (fault: unknown) => errors.push(fault) });
    program = window.eval(`${readFileSync(script, "utf8")}; program`) as Program;
    // The browser's database does not answer here: nothing of the view waits for it.
    const never = new Proxy({}, { get: () => () => new Promise(() => undefined) });
    const tabs = { tell: () => undefined, listen: () => () => undefined };
    app = program.start(readFileSync("scenarios/suspender-90.json", "utf8"), {
      store: never,
      tabs,
      slips: null,
      remember: () => undefined,
      now: () => 0,
      persist: () => undefined,
    });
    await until(open);
  });
  afterAll(() => {
    window.close();
    copy.remove();
  });

  const body = (): HTMLElement => window.document.body;
  const one = (selector: string): HTMLElement => {
    const found = body().querySelector<HTMLElement>(selector);
    if (found === null) throw new Error(`nothing is ${selector} in ${body().innerHTML.slice(0, 2000)}`);
    return found;
  };
  /** Lets the promises and timers of what has just been asked come, until it is so. The test's own limit ends the waiting. */
  async function until(so: () => boolean): Promise<void> {
    do {
      await new Promise((then) => setTimeout(then, 5));
      program.flush();
    } while (!so());
  }
  const input = (selector: string): HTMLInputElement => one(selector) as HTMLInputElement;
  const open = (): boolean => body().querySelector("main h2") !== null;

  it("has a tab between the others, with what it answers, and is open where the address names it", () => {
    expect(program.labels().slice(0, 4)).toEqual(["Draw", "Weigh", "Inch", "Float"]);
    const tab = one("nav a[href='#inch']");
    expect([tab.textContent, tab.title, tab.getAttribute("aria-current")]).toEqual([
      "Inch",
      "How long is the bait in inches?",
      "page",
    ]);
    expect(one("main").getAttribute("aria-label")).toBe("Inch");
    expect(one("main h2").textContent).toBe("Made up");
  });

  it("shows a number that answers why", () => {
    const asked = one("main .readout button");
    expect(asked.ariaLabel?.replace(/\s/g, " ")).toBe("Length: 90 mm. Why?");
    asked.click();
    expect(app.why.asked?.why()).toMatchObject({ title: "Length", source: "the drawing" });
    app.why.close();
  });

  it("has a number field and a slider, whose drag is one step of undo", () => {
    const was = app.work.scenario.water.depth_m;
    const slider = input("aside input[type=range]");
    for (const value of ["7", "7.5", "8"]) {
      slider.value = value;
      slider.dispatchEvent(new window.Event("input", { bubbles: true }));
    }
    slider.dispatchEvent(new window.Event("blur"));
    program.flush();
    expect(input("aside input[type=text]").value).toBe("8.0");
    app.work.undo();
    expect(app.work.scenario.water.depth_m).toBe(was);
    expect(app.work.undoLabel).toBeNull();
  });

  it("follows the document with a slow figure, and marks the old one until the hand rests", async () => {
    const { work } = app;
    const deep = (depth_m: number): void => {
      work.edit("depth", "depth", (from) => ({ ...from, water: { ...from.water, depth_m } }));
      program.flush();
    };
    deep(3);
    await until(() => one(".twice").textContent === "6");
    deep(5);
    expect(one(".twice").textContent).toBe("6 (old)");
    await until(() => one(".twice").textContent === "10");
  });

  it("keeps what a hand has entered with the bait, also when another view was open meanwhile", async () => {
    const field = input("aside .note");
    field.value = "to the bench";
    field.dispatchEvent(new window.Event("input", { bubbles: true }));
    program.flush();
    expect(one("main .note").textContent).toBe("to the bench");
    expect(app.beside.now["work/inch"]).toEqual({ note: "to the bench" });
    app.view.key = "nowhere";
    program.flush();
    expect(body().querySelector("main")).toBeNull();
    app.view.show("inch");
    program.flush();
    await until(open);
    expect(one("main .note").textContent).toBe("to the bench");
  });

  it("says what happened where it breaks, and leaves the page alone", () => {
    const field = input("aside .note");
    field.value = "break";
    field.dispatchEvent(new window.Event("input", { bubbles: true }));
    program.flush();
    expect(one("main").textContent).toContain("The view ‘Inch’");
    expect(one("main").textContent).toContain("made to break");
    expect(errors).toHaveLength(1);
    expect(one("nav").textContent).toContain("Weigh");
    expect(one("aside input[type=range]")).toBeDefined();
  });

  it("is told in the recipe: what a view exports, and by which verbs it does all this", () => {
    const recipe = /\*\*A view\.\*\*[\s\S]*?(?=\n\n\*\*)/.exec(readFileSync("DEVELOPERS.md", "utf8"))?.[0];
    for (const word of ["views/index.ts", "Main.svelte", "Side.svelte", "load", "clock", "keptWith"])
      expect(recipe).toContain(`\`${word}\``);
    for (const word of ["app.beside.keep", "Later.follow", "Readout", "WhyPanel", "Guard"])
      expect(recipe).toContain(`\`${word}\``);
  });
});

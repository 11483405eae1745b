import "./type.css";
import "./app.css";
import { mount } from "svelte";
import demo from "../../scenarios/suspender-90.json?raw";
import { parseScenario } from "../document";
import App from "./App.svelte";
import { startKept, Tabs } from "./kept";
import { App as AppState } from "./state";
import { FIRST_VIEW, VIEWS } from "./views";
import { FIGURES } from "./words/figures";
import { PAGE } from "./words/page";

/** A storage of the browser, or null where it is forbidden or missing. */
function storage(kind: "localStorage" | "sessionStorage"): Storage | null {
  try {
    return window[kind];
  } catch {
    return null;
  }
}

/** Where a tab remembers, over a reload, which bait it shows. */
const SHOWN = "trimwright/bait";

function shown(tab: Storage | null): string | null {
  try {
    return tab?.getItem(SHOWN) ?? null;
  } catch {
    return null;
  }
}

const target = document.getElementById("app");
if (target === null) throw new Error("The page has no element #app.");
const parsed = parseScenario(demo);
if (!parsed.ok)
  throw new Error(`The demo scenario is refused: ${parsed.problems.map((one) => one.message).join(" ")}`);

// The code of the view that opens comes while the bait is looked for. Where it does not come, the view says so.
const opening = location.hash.replace(/^#/, "");
const early = VIEWS.find((one) => one.key === opening) ?? VIEWS.find((one) => one.key === FIRST_VIEW);
early?.load("en").catch(() => undefined);

const local = storage("localStorage");
const tab = storage("sessionStorage");
const { store, kept, trouble, told } = await startKept(local, shown(tab), Date.now());

const app = new AppState({
  scenario: parsed.scenario,
  kept,
  keeping: {
    store,
    tabs: new Tabs(),
    slips: local,
    remember: (id) => {
      try {
        tab?.setItem(SHOWN, id);
      } catch {
        // The last bait of any tab comes back then.
      }
    },
    now: Date.now,
    persist: () => {
      // Missing where the page is no secure context; refused is as good as not asked.
      const { storage: manager } = navigator as { readonly storage?: Partial<StorageManager> };
      manager?.persist?.().catch(() => undefined);
    },
  },
  views: VIEWS.map((one) => one.key),
  first: FIRST_VIEW,
  hash: location.hash,
  store: local,
  width: window.innerWidth,
  language: navigator.language,
  dark: matchMedia("(prefers-color-scheme: dark)").matches,
  calm: matchMedia("(prefers-reduced-motion: reduce)").matches,
});
app.baits.setTrouble(trouble);
app.baits.setTold(told);
// A page in another language has its texts from the start.
await Promise.all([PAGE.ready(app.prefs.language), FIGURES.ready(app.prefs.language)]).catch(() => undefined);
mount(App, { target, props: { app } });

// The worker that keeps the page's files. A browser gives none where the page is no secure context; while the page is being
// developed its files change all the time.
const { serviceWorker } = navigator as { readonly serviceWorker?: ServiceWorkerContainer };
if (import.meta.env.PROD && window.isSecureContext && serviceWorker !== undefined)
  app.release.follow(serviceWorker, "./offline.js", () => app.baits.flush()).catch(() => undefined);

import "./app.css";
import { mount } from "svelte";
import demo from "../../scenarios/suspender-90.json?raw";
import { parseScenario } from "../document";
import App from "./App.svelte";
import { App as AppState } from "./state";
import type { Store } from "./state/prefs.svelte";
import { FIRST_VIEW, VIEWS } from "./views";

/** The browser's storage, or null where it is forbidden or missing. */
function storage(): Store {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

const target = document.getElementById("app");
if (target === null) throw new Error("The page has no element #app.");
const parsed = parseScenario(demo);
if (!parsed.ok)
  throw new Error(`The demo scenario is refused: ${parsed.problems.map((one) => one.message).join(" ")}`);

const app = new AppState({
  scenario: parsed.scenario,
  views: VIEWS.map((one) => one.key),
  first: FIRST_VIEW,
  hash: location.hash,
  store: storage(),
  width: window.innerWidth,
  dark: matchMedia("(prefers-color-scheme: dark)").matches,
  calm: matchMedia("(prefers-reduced-motion: reduce)").matches,
  // A name of its own for each page, so that two pages do not write over each other's draft.
  page: `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`,
});
mount(App, { target, props: { app } });

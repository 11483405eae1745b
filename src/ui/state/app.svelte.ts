import { createContext } from "svelte";
import type { Scenario } from "../../document";
import type { Band } from "../../model/statics";
import type { TerminalRise } from "../../model/tow";
import { ModelClient } from "../../runner";
import { Compare } from "./compare.svelte";
import { Drafts } from "./drafts";
import { Files } from "./files.svelte";
import { Prefs } from "./prefs.svelte";
import type { Store } from "./prefs.svelte";
import { Later } from "./runs.svelte";
import { Session } from "./session.svelte";
import { StageState } from "./stage.svelte";
import { Swim } from "./swim.svelte";
import { Units } from "./units";
import { ViewState } from "./view.svelte";
import { WhyState } from "./why.svelte";
import { Workspace } from "./workspace.svelte";
import type { Worked } from "./workspace.svelte";

/** What the page is started with. */
export interface Start {
  readonly scenario: Scenario;
  readonly views: readonly string[];
  /** The view that the page opens with. */
  readonly first: string;
  readonly hash: string;
  readonly store: Store;
  readonly width: number;
  /** The system asks for dark paper. */
  readonly dark: boolean;
  /** The person asked for as little motion as can be. */
  readonly calm: boolean;
  /** Names this page's draft. */
  readonly page: string;
}

/** Figures of one variant that the worker takes a while for. */
export class SlowFigures {
  readonly rise = new Later<TerminalRise>();
  readonly band = new Later<Band>();
  readonly #client: ModelClient;
  readonly #name: string;

  constructor(client: ModelClient, name: string) {
    this.#client = client;
    this.#name = name;
  }

  ask({ scenario }: Worked): void {
    void this.rise.ask(() => this.#client.rise(scenario, `${this.#name} rise`));
    void this.band.ask(() => this.#client.band(scenario, {}, `${this.#name} band`));
  }

  clear(): void {
    this.rise.clear();
    this.band.clear();
  }
}

/** Everything the page holds: the document, what follows from it, and what belongs to the person. */
export class App {
  readonly prefs: Prefs;
  readonly units: Units;
  readonly work: Workspace;
  readonly files: Files;
  readonly compare: Compare;
  readonly view: ViewState;
  readonly why = new WhyState();
  readonly stage = new StageState();
  readonly drafts: Drafts;
  readonly calm: boolean;
  readonly sessions: { readonly float: Session; readonly swim: Session };
  readonly swim: Swim;
  readonly figures: SlowFigures;
  readonly pinnedFigures: SlowFigures;

  constructor(start: Start) {
    this.calm = start.calm;
    this.prefs = new Prefs(start.store, start.width);
    this.prefs.systemDark = start.dark;
    this.units = new Units(this.prefs);
    this.work = new Workspace(start.scenario);
    this.files = new Files(this.work);
    this.compare = new Compare(this.work);
    this.view = new ViewState(start.views, start.first, start.hash);
    this.drafts = new Drafts(start.page);
    // Two workers: a run that is being watched does not wait for a band that takes its time.
    const runs = new ModelClient();
    const figures = new ModelClient();
    this.sessions = {
      // A bait in the tub lies still until a hand pushes it under.
      float: new Session("tub", runs, this.work, this.compare, true),
      swim: new Session("swim", runs, this.work, this.compare, start.calm),
    };
    this.swim = new Swim(this.sessions.swim, runs, this.work, this.compare);
    this.figures = new SlowFigures(figures, "open");
    this.pinnedFigures = new SlowFigures(figures, "pinned");
  }

  /** The session of the view that is open, where it runs one. */
  get session(): Session | null {
    const { key } = this.view;
    return key === "float" || key === "swim" ? this.sessions[key] : null;
  }
}

const [get, set] = createContext<App>();

/** The page's state, in any component. */
export const app = get;
export const provideApp = set;

import { createContext } from "svelte";
import type { KeptBait, Scenario } from "../../document";
import type { ResolvedTarget } from "../../model/bench";
import type { Band } from "../../model/statics";
import type { TerminalRise } from "../../model/tow";
import { ModelClient } from "../../runner";
import { openAnnex } from "../kept";
import type { Annex, Tabs } from "../kept";
import type { Language } from "../words/base";
import { Baits } from "./baits.svelte";
import type { Keeping } from "./keeping";
import { BesideState } from "./beside.svelte";
import { aPin, Compare } from "./compare.svelte";
import { GuideState } from "./guide.svelte";
import { Files } from "./files.svelte";
import { aFlag, aRecord, aText, listOf, oneOf } from "./readers";
import { Prefs } from "./prefs.svelte";
import { Release } from "./release.svelte";
import type { Store } from "./prefs.svelte";
import { Later } from "./runs.svelte";
import { Shelf } from "./shelf.svelte";
import { StageState } from "./stage.svelte";
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
  /** The language that the browser asks for. */
  readonly language: string;
  /** The person asked for as little motion as can be. */
  readonly calm: boolean;
  /** The bait to go on with; null: the scenario above, untouched. */
  readonly kept: KeptBait | null;
  readonly keeping: Keeping;
}

/** Figures of one variant that the worker takes a while for. */
export class SlowFigures {
  readonly rise = new Later<TerminalRise>();
  readonly band = new Later<Band>();
  /** What a target by its rise comes to; grams and 'suspends' need no worker (`goalOf`). */
  readonly goal = new Later<ResolvedTarget>();
  readonly #client: ModelClient;
  readonly #name: string;

  constructor(client: ModelClient, name: string) {
    this.#client = client;
    this.#name = name;
  }

  ask({ scenario }: Worked): void {
    void this.rise.ask(() => this.#client.rise(scenario, `${this.#name} rise`));
    void this.band.ask(() => this.#client.band(scenario, {}, `${this.#name} band`));
    if (scenario.target?.netFrom === "rise")
      void this.goal.ask(() => this.#client.target(scenario, `${this.#name} target`));
    else this.goal.clear();
  }

  clear(): void {
    this.rise.clear();
    this.band.clear();
    this.goal.clear();
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
  readonly baits: Baits;
  readonly shelf: Shelf;
  readonly guide: GuideState;
  /** What views keep with the bait beside the document. */
  readonly beside = new BesideState();
  readonly tabs: Tabs;
  readonly release = new Release();
  readonly calm: boolean;
  /** Nothing was kept here when the page was opened. */
  readonly firstVisit: boolean;
  /** The worker for runs. A run that is being watched does not wait for a band that takes its time. */
  readonly runs = new ModelClient();
  readonly figures: SlowFigures;
  readonly pinnedFigures: SlowFigures;

  constructor(start: Start) {
    this.calm = start.calm;
    this.firstVisit = start.kept === null;
    this.prefs = new Prefs(start.store, start.width, start.language);
    this.prefs.systemDark = start.dark;
    this.guide = new GuideState(this.prefs);
    this.units = new Units(this.prefs);
    const { kept } = start;
    const language = (): Language => this.prefs.language;
    this.work =
      kept === null
        ? new Workspace(start.scenario, {}, language)
        : new Workspace(kept.scenario, { trail: kept.trail, inFile: kept.inFile }, language);
    this.beside.open(kept?.beside ?? {});
    this.tabs = start.keeping.tabs;
    this.baits = new Baits(start.keeping, this.work, this.beside, kept, language);
    this.shelf = new Shelf(this.baits, this.work, () => this.annex(), language);
    this.files = new Files(
      this.work,
      (scenario, own) => this.baits.start(scenario, {}, own),
      {
        file: async () => (await this.annex()).file(this.baits.id),
        setFile: async (file) => (await this.annex()).setFile(this.baits.id, file),
      },
      language,
    );
    this.compare = new Compare(this.work);
    this.view = new ViewState(start.views, start.first);
    this.#keepPlace(start.hash);
    const figures = new ModelClient();
    this.figures = new SlowFigures(figures, "open");
    this.pinnedFigures = new SlowFigures(figures, "pinned");
  }

  #annex: Promise<Annex> | null = null;

  /** What belongs to baits and is seldom asked for; its database is opened when somebody asks first. */
  annex(): Promise<Annex> {
    return (this.#annex ??= openAnnex());
  }

  /** What comes back with the bait: where one is on the page, and the pinned variants. An address that names a view wins. */
  #keepPlace(hash: string): void {
    const { beside, view } = this;
    beside.keep("view", "place", view, { key: oneOf(...view.known) });
    if (view.names(hash)) view.follow(hash);
    beside.keep("sections", "place", this.prefs, { sections: aRecord(aFlag) });
    beside.keep<Pick<BesideState, "typed">>("typed", "work", beside, { typed: aRecord(aText) });
    const pinned: Pick<Compare, "pins"> = this.compare;
    beside.keep("pins", "work", pinned, { pins: listOf(aPin) });
  }
}

const [get, set] = createContext<App>();

/** The page's state, in any component. */
export const app = get;
export const provideApp = set;

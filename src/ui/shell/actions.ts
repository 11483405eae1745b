import { STAGE_KEYS, type Player } from "../stage";
import type { App } from "../state";
import { VIEWS } from "../views";
import type { KeyAction } from "./keys";

interface Verbs {
  readonly app: App;
  /** The clock of the run that the open view shows, where it shows one. */
  readonly clock: () => Player | null;
  readonly dialog: (name: "baits" | "new" | "recipe" | "keys") => void;
  readonly open: () => void;
  readonly save: () => void;
}

/** How far an arrow moves the clock, s. */
const SCRUB = 0.5;

/** The keys of the page. */
export function actionsOf({ app, clock, dialog, open, save }: Verbs): readonly KeyAction[] {
  function scrub(by: number): void {
    const player = clock();
    player?.seek(player.time + by);
  }

  return [
    { keys: ["Space"], shown: "space", does: "does.play", run: () => clock()?.toggle() },
    {
      keys: [","],
      shown: ",",
      does: "does.back",
      anywhere: true,
      run: () => clock()?.step(-1),
    },
    { keys: ["."], shown: ".", does: "does.on", anywhere: true, run: () => clock()?.step(1) },
    { keys: ["["], shown: "[", does: "does.slower", anywhere: true, run: () => clock()?.slower() },
    { keys: ["]"], shown: "]", does: "does.faster", anywhere: true, run: () => clock()?.faster() },
    { keys: ["ArrowLeft"], shown: "←", does: "does.halfBack", run: () => scrub(-SCRUB) },
    { keys: ["ArrowRight"], shown: "→", does: "does.halfOn", run: () => scrub(SCRUB) },
    { keys: ["Home"], shown: "Home", does: "does.start", run: () => clock()?.seek(0) },
    {
      keys: ["End"],
      shown: "End",
      does: "does.end",
      run: () => clock()?.seek(clock()?.duration ?? 0),
    },
    {
      keys: ["p"],
      shown: "p",
      does: "does.pin",
      anywhere: true,
      run: () => app.compare.toggle(),
    },
    ...VIEWS.map((one, i) => ({
      keys: [String(i + 1)],
      shown: String(i + 1),
      does: one.key,
      anywhere: true,
      run: () => app.view.show(one.key),
    })),
    { keys: ["$mod+z"], shown: "Ctrl Z", does: "does.undo", anywhere: true, run: () => app.work.undo() },
    {
      keys: ["$mod+Shift+Z", "$mod+y"],
      shown: "Ctrl Shift Z",
      does: "does.redo",
      anywhere: true,
      run: () => app.work.redo(),
    },
    { keys: ["b"], shown: "b", does: "does.baits", anywhere: true, run: () => dialog("baits") },
    { keys: ["n"], shown: "n", does: "does.new", anywhere: true, run: () => dialog("new") },
    { keys: ["r"], shown: "r", does: "does.recipe", anywhere: true, run: () => dialog("recipe") },
    { keys: ["$mod+o"], shown: "Ctrl O", does: "does.open", anywhere: true, run: open },
    {
      keys: ["$mod+s"],
      shown: "Ctrl S",
      does: "does.save",
      anywhere: true,
      typing: true,
      run: save,
    },
    { keys: ["?", "Shift+?"], shown: "?", does: "does.keys", anywhere: true, run: () => dialog("keys") },
  ];
}

/** Keys that a view or the stage listens to itself, for the list of keys. */
export function listedKeys(): readonly KeyAction[] {
  return [...VIEWS.flatMap((one) => one.keys ?? []), ...STAGE_KEYS].map(({ keys, does }) => ({
    keys: [],
    shown: keys,
    does,
    run: () => undefined,
  }));
}

import type { Player } from "../../stage";
import { keptWith } from "../../state";

/** The clock of the run that Teach shows: the page's keys act on it. */
class Shown {
  player = $state.raw<Player | null>(null);

  /** Shows it for the life of the component that calls this. */
  show(player: Player): void {
    $effect(() => {
      this.player = player;
      // Meanwhile another one may be shown.
      return () => {
        if (this.player === player) this.player = null;
      };
    });
  }
}

export const shownIn = keptWith(() => new Shown());

import { keptWith, Session } from "../../state";

/** The release in the tub. A bait in the tub lies still until a hand pushes it under: nothing starts by itself. */
export const tubSession = keptWith(
  ({ runs, work, compare }) => new Session("tub", runs, work, compare, true),
);

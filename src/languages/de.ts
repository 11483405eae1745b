import type { Echoes } from "./echo";
import { baits } from "./de-baits";
import { bench } from "./de-bench";
import { beside } from "./de-beside";
import { cautions } from "./de-cautions";
import { lesson } from "./de-lesson";
import { materials } from "./de-materials";
import { messages } from "./de-messages";
import { model } from "./de-model";
import { names } from "./de-names";
import { drawing, inputs, parts } from "./de-parts";
import { schema } from "./de-schema";
import { state } from "./de-state";
import { steps } from "./de-steps";

/** What the scenario's file and the model say, in German, each under its English text. */
export const texts: Echoes = {
  ...schema,
  ...beside,
  ...parts,
  ...names,
  ...inputs,
  ...drawing,
  ...materials,
  ...baits,
  ...cautions,
  ...messages,
  ...model,
  ...bench,
  ...lesson,
  ...state,
  ...steps,
};

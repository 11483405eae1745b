import { Below } from "../base";

/** What the scenario's file and the model say of a bait: titles, help, names of parts and materials, steps of undo, messages. */
export const FILE = new Below({ de: () => import("./de") });

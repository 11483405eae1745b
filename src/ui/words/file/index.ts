import { OF_FILE, OF_SHEETS } from "../../../languages";
import { Below } from "../base";

/** What the scenario's file and the model say of a bait: titles, help, names of parts and materials, steps of undo, messages. */
export const FILE = new Below(OF_FILE);

/** Marks the name of a step of undo: it is kept with the bait in English, and told in the language that is read. */
export const step = (name: string): string => name;

/** The same with what the printed sheets say. */
export const SHEET = new Below(OF_SHEETS);

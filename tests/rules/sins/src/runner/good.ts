import { readFileSync } from "node:fs";
import { document } from "../document";
import { statics } from "../model/statics";

export const good = [readFileSync, document, statics];

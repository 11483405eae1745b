// sin: node-only-in-runner
import { readFileSync } from "node:fs";

export const sin = readFileSync;

// sin: folder-order-sheet
import { runner } from "../runner";

export const sin = runner;

// sin: folder-order-drawing
import { runner } from "../runner";

export const sin = runner;

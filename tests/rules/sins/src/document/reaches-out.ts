// sin: folder-order-document
import { runner } from "../runner";

export const sin = runner;

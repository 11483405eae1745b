// sin: folder-order-sheet
import { plots } from "../ui/plots";

export const sin = plots;

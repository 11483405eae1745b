// sin: folder-order-units
import { document } from "../document";

export const sin = document;

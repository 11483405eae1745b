// sin: folder-order-languages
import { document } from "../document";

export const sin = document;

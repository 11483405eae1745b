// sin: folder-order-model
import { document } from "../../document";

export const sin = document;

// sin: model-order-parts
import { bait } from "../bait";

export const sin = bait;

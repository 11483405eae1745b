// sin: model-order-shaping
import { bait } from "../bait";

export const sin = bait;

// sin: model-order-shape
import { bait } from "../bait";

export const sin = bait;

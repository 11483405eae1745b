// sin: model-order-line
import { tow } from "../tow";

export const sin = tow;

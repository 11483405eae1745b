// sin: only-doors
import { bait } from "../model/bait/inner";

export const sin = bait;

// sin: only-doors-for-the-page
import { bait } from "../model/bait/inner";

export const sin = bait;

// sin: only-doors-for-the-page
import { state } from "./state/inner";

export const sin = state;

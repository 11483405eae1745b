// sin: no-cycles
import { hen } from "./hen";

export const egg = (): unknown => hen;

// sin: no-unresolved
import { nothing } from "./does-not-exist";

export const wrong: unknown = nothing;

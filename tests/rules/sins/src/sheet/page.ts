// sin: page-packages-only-in-page
import { tick } from "svelte";

export const sin = tick;

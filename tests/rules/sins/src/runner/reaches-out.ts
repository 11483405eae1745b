// sin: folder-order-runner
import { stage } from "../ui/stage";

export const sin = stage;

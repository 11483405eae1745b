import { World } from "planck";
import { tow } from "../tow";

export const good = [World, tow];

import { sheet } from "../sheet";

export const good = sheet;

export { tow } from "./inner";

export { runner } from "./inner";

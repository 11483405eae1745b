export { parts } from "./inner";

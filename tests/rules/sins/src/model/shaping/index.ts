export { shaping } from "./inner";

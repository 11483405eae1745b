export { base } from "./inner";

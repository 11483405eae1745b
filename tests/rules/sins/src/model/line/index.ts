export { line } from "./inner";

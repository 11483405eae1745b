export { plots } from "./inner";

export { bench } from "./inner";

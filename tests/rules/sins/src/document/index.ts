export { document } from "./inner";

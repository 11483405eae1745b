export { bait } from "./inner";

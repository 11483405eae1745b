export { materials } from "./inner";

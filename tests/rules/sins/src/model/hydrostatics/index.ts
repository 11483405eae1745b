export { hydrostatics } from "./inner";

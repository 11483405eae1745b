// The model of the steady tow, for the page's own thread: it comes once the first run is there.
export { towHere } from "../../../runner";

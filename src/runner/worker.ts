import { expose } from "comlink";
import { createService } from "./service";

/** The web worker: another thread's door to the model. The page comes in by client.ts. */
expose(createService());

import { expose } from "comlink";
import { createService } from "./service";

/** The web worker: the model in a thread of its own. The page reaches it through client.ts. */
expose(createService());

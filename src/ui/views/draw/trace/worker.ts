import { expose } from "comlink";
import { tracedBreadth, tracedOutline } from "../../../../model/shaping";
import { findSilhouette } from "./silhouette";

/** What a picture's outline takes some time for, in a thread of its own: the page goes on meanwhile. */
const api = { findSilhouette, tracedBreadth, tracedOutline };
export type TraceApi = typeof api;

expose(api);

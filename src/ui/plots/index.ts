/** Curves over time, and the plots as files. */
export { default as TimePlot } from "./TimePlot.svelte";
export { exportPlotSVG, exportPNG } from "./export";
export { download } from "./files";
export type { PlotMark, Series } from "./types";
export { curvesCsv } from "./table";

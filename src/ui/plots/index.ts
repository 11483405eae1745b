/** Curves over time, and the plots and recordings as files. */
export { default as TimePlot } from "./TimePlot.svelte";
export { download, exportPlotSVG, exportPNG, recordingCSV } from "./export";
export type { PlotMark, Series } from "./types";

/** Curves over time, and the plots and recordings as files. */
export { default as TimePlot } from "./TimePlot.svelte";
export { exportPlotSVG, exportPNG } from "./export";
export { download, recordingCSV } from "./files";
export type { PlotMark, Series } from "./types";

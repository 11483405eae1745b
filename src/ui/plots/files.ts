import type { Channel, Recording } from "../../model/motion";

/** Columns of the CSV: header with unit, channel, and factor from SI. */
const COLUMNS: readonly (readonly [string, Channel, number])[] = [
  ["depth_m", "depth", 1],
  ["pitch_deg", "pitch", 180 / Math.PI],
  ["speed_m_s", "speed", 1],
  ["tension_N", "tension", 1],
];

/**
 * A recording as CSV (RFC 4180, LF): a row a frame, units in the header. Depth is the tie eye's, down positive; pitch
 * is nose-up positive. Numbers are not rounded.
 */
export function recordingCSV(recording: Pick<Recording, "frames" | "frameRate" | "channel">): string {
  const channels = COLUMNS.map(([, channel, factor]) => ({ values: recording.channel(channel), factor }));
  const rows = [["time_s", ...COLUMNS.map(([header]) => header)].join(",")];
  for (let i = 0; i < recording.frames; i++) {
    const cells = [
      i / recording.frameRate,
      ...channels.map(({ values, factor }) => (values[i] ?? NaN) * factor),
    ];
    if (cells.some((c) => !Number.isFinite(c)))
      throw new RangeError(
        `recordingCSV: frame ${i} holds a number that is not finite (${cells.join(", ")})`,
      );
    rows.push(cells.join(","));
  }
  return `${rows.join("\n")}\n`;
}

/** Hands a file to the user. */
export function download(content: Blob | string, name: string, type = "text/plain"): void {
  const url = URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

import type { Channel, Recording } from "../model/motion";
import { fromSI } from "../units";
import type { UnitName } from "../units";

/** The channels that the table begins with: heading, unit of the heading, channel. */
const CHANNELS: readonly (readonly [heading: string, unit: UnitName, channel: Channel])[] = [
  ["depth_m", "m", "depth"],
  ["pitch_deg", "deg", "pitch"],
  ["speed_m_s", "m_s", "speed"],
  ["tension_N", "N", "tension"],
  ["eye_x_m", "m", "x"],
];

/** What the table needs of a recording. */
export type TableOf = Pick<Recording, "frames" | "frameRate" | "channel" | "wrench">;

/**
 * A recording as CSV (RFC 4180: comma, CRLF): one row a frame, and every heading ends with its unit. The page and the
 * headless command write this one table; docs/scenario-format.md explains its columns. Every force that the recording
 * holds has three columns. Numbers are not rounded.
 */
export function recordingCsv(recording: TableOf): string {
  const columns = CHANNELS.map(([, unit, channel]) => ({ values: recording.channel(channel), unit }));
  const depth = recording.channel("depth");
  const forces = recording.frames === 0 ? [] : [...recording.wrench(0).keys()];
  const head = [
    "time_s",
    ...CHANNELS.map(([heading]) => heading),
    "eye_z_m",
    ...forces.flatMap((key) => [`${key}_x_N`, `${key}_z_N`, `${key}_m_Nm`]),
  ];
  const rows = [head.join(",")];
  for (let frame = 0; frame < recording.frames; frame++) {
    const wrenches = recording.wrench(frame);
    const cells = [
      frame / recording.frameRate,
      ...columns.map(({ values, unit }) => fromSI(values[frame] ?? NaN, unit)),
      // Height above the still surface.
      -(depth[frame] ?? NaN),
      ...forces.flatMap((key) => {
        const { x, z, m } = wrenches.get(key) ?? { x: NaN, z: NaN, m: NaN };
        return [x, z, m];
      }),
    ];
    const wrong = cells.findIndex((cell) => !Number.isFinite(cell));
    if (wrong >= 0)
      throw new RangeError(
        `The table of the run: ${head[wrong]} of frame ${frame} is ${cells[wrong]}. ` +
          "This is a fault of the program: please report it with the scenario file.",
      );
    rows.push(cells.join(","));
  }
  return `${rows.join("\r\n")}\r\n`;
}

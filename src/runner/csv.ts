import { FORCES } from "../model/forces";
import type { Recording } from "../model/motion";

/**
 * A recording as CSV (RFC 4180), one row a frame, units in the header: depth of the tie eye (m, down),
 * pitch (degrees, nose-up), speed of G (m/s), tension (N), place of the tie eye (m, world), and every force by its
 * source (N and N·m, body axes about G: forward, up, nose-up). Numbers are not rounded.
 */
export function recordingCsv(recording: Recording): string {
  const keys = [...FORCES.map((force) => force.key), "line" as const].filter(
    (key, i, all) => all.indexOf(key) === i,
  );
  const head = [
    "time_s",
    "depth_m",
    "pitch_deg",
    "speed_m_s",
    "tension_N",
    "eye_x_m",
    "eye_z_m",
    ...keys.flatMap((key) => [`${key}_x_N`, `${key}_z_N`, `${key}_m_Nm`]),
  ];
  const depth = recording.channel("depth");
  const pitch = recording.channel("pitch");
  const speed = recording.channel("speed");
  const tension = recording.channel("tension");
  const rows = [head.join(",")];
  for (let frame = 0; frame < recording.frames; frame++) {
    const time = frame / recording.frameRate;
    const { eye } = recording.at(time);
    const wrenches = recording.wrench(frame);
    const forces = keys.flatMap((key): (number | string)[] => {
      const one = wrenches.get(key);
      return one === undefined ? ["", "", ""] : [one.x, one.z, one.m];
    });
    const angle = ((pitch[frame] ?? NaN) * 180) / Math.PI;
    rows.push([time, depth[frame], angle, speed[frame], tension[frame], eye.x, eye.z, ...forces].join(","));
  }
  return `${rows.join("\r\n")}\r\n`;
}

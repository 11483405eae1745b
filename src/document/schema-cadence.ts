import { z } from "zod";
import { above, list, maybe, number, whole } from "./fields";

/** The keys of a cadence: its moves, and moves that are repeated. */

/** Most moves that a cadence has, repeated ones counted as often as they are done. */
export const MOST_MOVES = 1000;

const seconds = (label: string) => number(label, "s", [0, 3600], [0, 20, 0.1]);
const quick = (label: string) => above(label, "s", [0, 60], [0.05, 2, 0.01]);
const kinds = [
  z.strictObject({ do: z.literal("settle"), for_s: seconds("Settle for") }).meta({ title: "Settle" }),
  z
    .strictObject({
      do: z.literal("reel"),
      speed_m_s: above("Retrieve speed", "m/s", [0, 10], [0.1, 2.5, 0.05]),
      for_s: maybe(seconds("Reel for")),
      length_m: maybe(above("Reel in", "m", [0, 500], [0.5, 30, 0.5])),
    })
    .meta({ title: "Reel", description: "For a time or for a length: exactly one of for_s and length_m." }),
  z.strictObject({ do: z.literal("pause"), for_s: seconds("Pause for") }).meta({ title: "Pause" }),
  z
    .strictObject({
      do: z.literal("twitch"),
      travel_m: number(
        "Twitch travel",
        "m",
        [0, 10],
        [0, 1, 0.01],
        "How far the rod tip moves away from the bait.",
      ),
      in_s: quick("Twitch time"),
      back_s: quick("Return time"),
    })
    .meta({ title: "Twitch" }),
  z.strictObject({ do: z.literal("slack"), for_s: seconds("Slack for") }).meta({ title: "Slack" }),
  z
    .strictObject({
      do: z.literal("lift"),
      height_m: number(
        "Lift by",
        "m",
        [-10, 10],
        [0, 2, 0.05],
        "The rod tip rises by this much and stays there.",
      ),
      in_s: quick("Lift time"),
    })
    .meta({ title: "Lift" }),
  z.strictObject({ do: z.literal("release"), for_s: seconds("Release for") }).meta({ title: "Release" }),
] as const;

const repeat = z
  .strictObject({
    do: z.literal("repeat"),
    times: maybe(whole("Times", [1, MOST_MOVES], [1, 30, 1], "How often the moves are done in a row.")),
    until: maybe(
      z.literal("line in").meta({
        title: "Until",
        description: "Again and again, until a reel finds no more line: that round is done to its end.",
      }),
    ),
    moves: z
      .array(z.discriminatedUnion("do", kinds).meta({ title: "Move" }))
      .min(1)
      .max(MOST_MOVES)
      .meta({ title: "Repeated moves" }),
  })
  .meta({
    title: "Repeat",
    description: "Moves that are done again and again: exactly one of times and until.",
  });

export const cadence = list(
  "Cadence",
  z.discriminatedUnion("do", [...kinds, repeat]).meta({ title: "Move" }),
  MOST_MOVES,
);

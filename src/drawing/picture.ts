import type { Vec } from "../model/base";
import type { ArrowScale } from "./arrows";
import { forceMarks } from "./forces";
import { pointOnScreen, type Ground } from "./ground";
import { LENS_BELOW, lensOf, type Lens } from "./lens";
import { movedMarks, scaledMarks, type Mark } from "./mark";
import { centreLetters, centreMarks, letterMarks, pitchMarks, pointerMarks } from "./notes";
import { pathMarks } from "./paths";
import { Placer } from "./placer";
import { rulerMarks } from "./rulers";
import { sceneryMarks } from "./scenery";
import { ghostMarksAt, posedMarks } from "./still";
import { RIVAL_DASH, type Posed, type Rival } from "./types";
import type { Speech } from "./words";

/** Everything that one picture of the water shows. */
export interface Picture extends Speech {
  readonly bait: Posed;
  readonly ghost: Posed | null;
  readonly rivals: readonly Rival[];
  /** Recent path of G, world, newest last. */
  readonly trace: readonly Vec[];
  readonly shows: {
    /** Force arrows with their letters. */
    readonly forces: boolean;
    /** Ruler of the arrows' lengths, and whether they stand head to tail with their sum. */
    readonly arrows: ArrowScale;
    readonly sum: boolean;
    /** Words and numbers beside the marks. */
    readonly labels: boolean;
    /** See into the body. */
    readonly xray: boolean;
  };
}

/**
 * The picture's marks in screen px, in layers from back to front. The baits themselves stand between `under` and `over`.
 * The moving stage keeps their drawings from one picture to the next; a still picture draws them anew.
 */
export interface Layers {
  readonly under: readonly Mark[];
  readonly lens: Lens | null;
  readonly over: readonly Mark[];
}

export function layersOf(picture: Picture, ground: Ground): Layers {
  const { bait, ghost, rivals, trace, words, shows } = picture;
  const away = pointerMarks(ground, bait, "bait", picture);
  const small = bait.scene.length * ground.view.scale < LENS_BELOW;
  return {
    under: [...sceneryMarks(ground, bait.scene, words.name), ...pathMarks(ground, bait, trace, words.name)],
    lens: small ? lensOf(ground, bait, shows.labels ? words.number : null) : null,
    over: [
      ...(ghost ? pointerMarks(ground, ghost, "pinned", picture, "ghost") : []),
      ...rivals.flatMap((rival) => {
        const role = `variant${rival.letter}` as const;
        const pointer = pointerMarks(ground, rival, rival.letter, picture, role);
        return pointer.length > 0 ? pointer : letterMarks(ground, rival, words.variant(rival.letter), role);
      }),
      ...away,
      ...(small || away.length > 0 ? [] : noteMarks(ground, picture)),
      ...rulerMarks(ground, bait, picture),
    ],
  };
}

/** Pitch, forces, G and B, each label where it finds room. */
function noteMarks(ground: Ground, { bait, words, shows }: Picture): Mark[] {
  const { size, rulers, at } = ground;
  const { G, B, eye } = bait.snapshot;
  const placer = new Placer({
    x0: rulers.left + 4,
    y0: 4,
    x1: size.width - 4,
    y1: size.height - rulers.bottom - 4,
  });
  // The depth's flag at the scale and the marks of G and B keep their places.
  placer.block(rulers.left + 30, at(eye).y, 60, 20);
  for (const p of [G, B]) placer.block(at(p).x, at(p).y, 13, 13);
  for (const { x, y } of centreLetters(ground, bait)) placer.block(x, y, 12, 15);
  const look = { scale: shows.arrows, sum: shows.sum, values: shows.labels };
  const forces = shows.forces ? forceMarks(ground, bait, look, placer, words) : [];
  const pitch = shows.labels ? pitchMarks(ground, bait, placer, words.number) : [];
  return [...pitch, ...forces, ...centreMarks(ground, bait)];
}

/** The whole picture as one list of marks in screen px: for files, and where no canvas is to be had. */
export function pictureMarks(picture: Picture, ground: Ground): Mark[] {
  const { bait, ghost, rivals, shows } = picture;
  const { under, lens, over } = layersOf(picture, ground);
  const { scale } = ground.view;
  const standing = (marks: readonly Mark[], nose: Vec): Mark[] =>
    movedMarks(scaledMarks(marks, scale), pointOnScreen(ground.at(nose)), 0);
  const { width, height } = ground.size;
  return [
    {
      kind: "polygon",
      what: null,
      points: [
        { x: 0, z: 0 },
        { x: width, z: 0 },
        { x: width, z: -height },
        { x: 0, z: -height },
      ],
      fill: { role: "waterTop", to: "waterDeep", t: 0.35 },
    },
    ...under,
    ...(ghost ? standing(ghostMarksAt(ghost, "ghost"), ghost.snapshot.nose) : []),
    ...rivals.flatMap((one) =>
      standing(ghostMarksAt(one, `variant${one.letter}`, RIVAL_DASH[one.letter]), one.snapshot.nose),
    ),
    ...standing(posedMarks(bait.scene, bait.snapshot, shows.xray), bait.snapshot.nose),
    ...(lens
      ? [
          ...lens.under,
          ...movedMarks(
            scaledMarks(posedMarks(bait.scene, bait.snapshot, shows.xray), lens.scale),
            pointOnScreen(lens.nose),
            0,
          ),
          ...lens.over,
        ]
      : []),
    ...over,
  ];
}

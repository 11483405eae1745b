import { Container, Graphics } from "pixi.js";
import type { Vec } from "../../model/base";
import type { Snapshot } from "../../model/motion";
import { dashed } from "./geometry";
import { ballMarks, bodyMarks, colourOf, ghostMarks, hookMarks, type Mark } from "./marks";
import { numberOf, type Palette } from "./palette";
import { hookedHangers } from "./still";
import type { Scene } from "./types";

/** Draws marks into a Graphics at `scale` px to a metre, y down. */
function drawMarks(g: Graphics, marks: readonly Mark[], palette: Palette, scale: number): void {
  const flat = (points: readonly Vec[]): { x: number; y: number }[] =>
    points.map((p) => ({ x: p.x * scale, y: -p.z * scale }));
  for (const mark of marks) {
    const { fill, stroke } = mark;
    const shape = (): void => {
      if (mark.kind === "circle")
        g.circle(mark.at.x * scale, -mark.at.z * scale, Math.max(1, mark.radius * scale));
      else g.poly(flat(mark.points), mark.kind === "polygon");
    };
    if (fill) {
      shape();
      g.fill({ color: numberOf(colourOf(fill, palette)), alpha: fill.alpha ?? 1 });
    }
    if (!stroke) continue;
    const style = {
      color: numberOf(colourOf(stroke, palette)),
      alpha: stroke.alpha ?? 1,
      width: Math.max(stroke.px, (stroke.real ?? 0) * scale),
      join: "round" as const,
      cap: "round" as const,
    };
    if (stroke.dash && mark.kind !== "circle") {
      const closed =
        mark.kind === "polygon" && mark.points[0] ? [...mark.points, mark.points[0]] : mark.points;
      for (const piece of dashed(closed, stroke.dash[0] / scale, stroke.dash[1] / scale))
        g.poly(flat(piece), false);
      g.stroke({ ...style, cap: "butt" });
    } else if (stroke.dash && mark.kind === "circle") {
      const r = mark.radius;
      const round = Array.from({ length: 49 }, (_, i) => ({
        x: mark.at.x + r * Math.cos((i * Math.PI) / 24),
        z: mark.at.z + r * Math.sin((i * Math.PI) / 24),
      }));
      for (const piece of dashed(round, stroke.dash[0] / scale, stroke.dash[1] / scale))
        g.poly(flat(piece), false);
      g.stroke({ ...style, cap: "butt" });
    } else {
      shape();
      g.stroke(style);
    }
  }
}

/** One bait on the stage: drawn once a scene and scale, then only moved. */
export class Figure {
  readonly container = new Container();
  readonly #style: "bait" | "ghost";
  readonly #dash: readonly [number, number];
  #body = new Graphics();
  #hooks: Graphics[] = [];
  #balls: Graphics[] = [];
  #made: { scene: Scene; xray: boolean; palette: Palette; scale: number } | null = null;

  constructor(style: "bait" | "ghost", dash: readonly [number, number] = [6, 4]) {
    this.#style = style;
    this.#dash = dash;
  }

  /**
   * Shows the bait at a snapshot. `at` maps the world to the screen, at `scale` px to a metre; while `moving`
   * the drawn lines may be up to a fifth too thick or thin, which saves redrawing at every picture of a zoom.
   */
  pose(
    scene: Scene,
    snapshot: Snapshot,
    xray: boolean,
    palette: Palette,
    scale: number,
    moving: boolean,
    at: (p: Vec) => { x: number; y: number },
  ): void {
    const made = this.#made;
    const ratio = made ? scale / made.scale : 0;
    const near = moving ? ratio > 0.8 && ratio < 1.25 : Math.abs(ratio - 1) < 1e-3;
    if (!made || made.scene !== scene || made.xray !== xray || made.palette !== palette || !near)
      this.#make(scene, xray, palette, scale);
    const k = scale / (this.#made?.scale ?? scale);
    const nose = at(snapshot.nose);
    this.#body.position.set(nose.x, nose.y);
    this.#body.rotation = -snapshot.pitch;
    this.#body.scale.set(k);
    this.#hooks.forEach((g, i) => {
      const hook = snapshot.hooks[i];
      g.visible = hook !== undefined;
      if (!hook) return;
      const p = at(hook.at);
      g.position.set(p.x, p.y);
      g.rotation = -hook.angle;
      g.scale.set(k);
    });
    this.#balls.forEach((g, i) => {
      const ball = snapshot.balls[i];
      g.visible = ball !== undefined && (xray || this.#style === "ghost");
      if (!ball) return;
      const p = at(ball);
      g.position.set(p.x, p.y);
      g.scale.set(k);
    });
  }

  #make(scene: Scene, xray: boolean, palette: Palette, scale: number): void {
    for (const child of this.container.removeChildren()) child.destroy();
    const ghost = this.#style === "ghost";
    const colour = ghost ? "ghost" : "ink";
    const drawn = (marks: readonly Mark[]): Graphics => {
      const g = this.container.addChild(new Graphics());
      drawMarks(g, marks, palette, scale);
      return g;
    };
    this.#body = drawn(ghost ? ghostMarks(scene, this.#dash) : bodyMarks(scene, xray));
    this.#balls = scene.balls.map((ball) => drawn(ballMarks(ball.radius, colour)));
    this.#hooks = hookedHangers(scene).map((hanger) => drawn(hookMarks(hanger, colour)));
    this.#made = { scene, xray, palette, scale };
  }
}

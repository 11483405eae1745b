import { Container, Graphics } from "pixi.js";
import type { Vec } from "../../model/base";
import {
  ballMarks,
  bodyMarks,
  ghostMarks,
  hookedHangers,
  hookMarks,
  type Mark,
  type Palette,
  type Point,
  type Posed,
  type Role,
  type Scene,
} from "../../drawing";
import { drawMarks } from "./paint";

/** One bait on the stage: drawn once for each scene and scale, then only moved. */
export class Figure {
  readonly container = new Container();
  readonly #role: Role;
  readonly #dash: readonly [number, number] | undefined;
  #body = new Graphics();
  #hooks: Graphics[] = [];
  #balls: Graphics[] = [];
  #made: { scene: Scene; xray: boolean; palette: Palette; scale: number } | null = null;

  /** With the role "ink" the bait itself; with another role a variant, dashed and hatched in that colour. */
  constructor(role: Role, dash?: readonly [number, number]) {
    this.#role = role;
    this.#dash = dash;
  }

  /**
   * Shows the bait at a snapshot. `at` maps the world to the screen, at `scale` px to a metre; while `moving`
   * the drawn lines may be up to a fifth too thick or thin, which saves redrawing at every picture of a zoom.
   */
  pose(
    { scene, snapshot }: Posed,
    xray: boolean,
    palette: Palette,
    scale: number,
    moving: boolean,
    at: (p: Vec) => Point,
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
      g.visible = ball !== undefined && (xray || this.#role !== "ink");
      if (!ball) return;
      const p = at(ball);
      g.position.set(p.x, p.y);
      g.scale.set(k);
    });
  }

  #make(scene: Scene, xray: boolean, palette: Palette, scale: number): void {
    for (const child of this.container.removeChildren()) child.destroy();
    const role = this.#role;
    const drawn = (marks: readonly Mark[]): Graphics => {
      const g = this.container.addChild(new Graphics());
      drawMarks(g, marks, palette, scale);
      return g;
    };
    this.#body = drawn(role === "ink" ? bodyMarks(scene, xray) : ghostMarks(scene, role, this.#dash));
    this.#balls = scene.balls.map((ball) => drawn(ballMarks(ball.radius, role)));
    this.#hooks = hookedHangers(scene).map((hanger) => drawn(hookMarks(hanger, role)));
    this.#made = { scene, xray, palette, scale };
  }
}

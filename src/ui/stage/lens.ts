import { Container, Graphics } from "pixi.js";
import type { Vec } from "../../model/base";
import { isNarrow, toScreen, type View } from "./camera";
import { Figure } from "./figure";
import { placed } from "./geometry";
import { mix, numberOf } from "./palette";
import type { Sheet } from "./sheet";
import { tickText } from "./ticks";
import type { Posed } from "./types";

/** Far off, a lens shows the bait's attitude and its parts. */
export class Lens {
  readonly container = new Container();
  readonly #disc = new Graphics();
  readonly #bait = new Figure("bait");

  constructor() {
    this.container.addChild(this.#disc, this.#bait.container);
  }

  hide(): void {
    this.container.visible = false;
  }

  draw(sheet: Sheet, bait: Posed, xray: boolean, labels: boolean): void {
    this.container.visible = true;
    const { view } = sheet;
    const g = this.#disc.clear();

    const { scene, snapshot } = bait;
    const { width, height } = sheet.size;
    const rulers = sheet.rulers;
    const palette = sheet.palette;
    const radius = Math.max(52, Math.min(110, 0.22 * Math.min(width, height)));
    const middle = placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch);
    const p = sheet.at(middle);
    const c = {
      x: width - radius - 14,
      y: height - rulers.bottom - radius - (isNarrow(sheet.size) ? 60 : 12),
    };
    if (Math.hypot(c.x - p.x, c.y - p.y) < radius + 30) c.x = rulers.left + radius + 14;
    const ring = Math.max(7, 0.75 * scene.length * view.scale);
    const d = Math.hypot(c.x - p.x, c.y - p.y);
    const u = { x: (c.x - p.x) / d, y: (c.y - p.y) / d };
    const ink = numberOf(palette.ink);
    g.circle(p.x, p.y, ring).stroke({ color: ink, width: 1, alpha: 0.7 });
    g.moveTo(p.x + ring * u.x, p.y + ring * u.y)
      .lineTo(c.x - radius * u.x, c.y - radius * u.y)
      .stroke({ color: ink, width: 1, alpha: 0.4 });
    g.circle(c.x, c.y, radius)
      .fill({ color: numberOf(mix(palette.waterTop, palette.paper, 0.4)) })
      .stroke({ color: ink, width: 1.25 });
    const scale = (1.3 * radius) / scene.length;
    const lensView: View = { x: middle.x, z: middle.z, scale };
    const lensAt = (q: Vec): { x: number; y: number } => {
      const s = toScreen(lensView, { width: 0, height: 0 }, q);
      return { x: c.x + s.x, y: c.y + s.y };
    };
    const surface = lensAt({ x: 0, z: 0 }).y;
    if (Math.abs(surface - c.y) < radius) {
      const half = Math.sqrt(radius * radius - (surface - c.y) ** 2);
      g.moveTo(c.x - half, surface)
        .lineTo(c.x + half, surface)
        .stroke({ color: ink, width: 1, alpha: 0.8 });
    }
    this.#bait.pose(scene, snapshot, xray, palette, scale, false, lensAt);
    if (labels)
      sheet.labels.put(`${tickText((snapshot.pitch * 180) / Math.PI, 0.1)}°`, c.x, c.y + radius - 12, {
        size: 12,
        colour: palette.ink,
        halo: palette.paper,
        anchorX: 0.5,
        anchorY: 0.5,
      });
  }
}

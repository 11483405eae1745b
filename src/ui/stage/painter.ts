import "pixi.js/unsafe-eval"; // shaders set up without eval: the page's content security policy forbids it
import { autoDetectRenderer, Container, Graphics, Rectangle, type Renderer, Sprite, Texture } from "pixi.js";
import type { Vec } from "../../model/base";
import type { ForceLegend } from "../../model/forces";
import { arrowKey, arrowOf, forceText, pxPerRootNewton } from "./arrows";
import { rulerSizes, toScreen, type Size, type View } from "./camera";
import { dashed, placed } from "./geometry";
import { Figure } from "./figure";
import { Labels } from "./labels";
import { forceWords } from "./legend";
import { cssOf, mix, numberOf, type Palette } from "./palette";
import { Placer } from "./placer";
import { decimalsOf, niceStep, ticksBetween, tickText } from "./ticks";
import type { Posed, StageOptions } from "./types";

/** Everything that one picture shows. */
export interface Picture {
  readonly bait: Posed;
  readonly ghost: Posed | null;
  /** Recent path of G, world, newest last. */
  readonly trace: readonly Vec[];
  readonly options: StageOptions;
  readonly view: View;
  /** The camera is still on its way: cheaper drawing will do. */
  readonly moving: boolean;
}

export type Kind = "webgl" | "canvas";

/** Under this length of the bait on the screen (px) its parts cannot be told apart: a lens shows them. */
const LENS_BELOW = 90;

/** True where the browser says that its WebGL is computed by the processor (or tells nothing of WebGL at all). */
function computedInSoftware(): boolean {
  const gl = document.createElement("canvas").getContext("webgl2", { failIfMajorPerformanceCaveat: true });
  if (!gl) return true;
  const info = gl.getExtension("WEBGL_debug_renderer_info");
  const name = String(info ? gl.getParameter(info.UNMASKED_RENDERER_WEBGL) : gl.getParameter(gl.RENDERER));
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

/** Draws pictures on a canvas of its own. Knows no clock: it draws when told. */
export class Painter {
  readonly kind: Kind;
  readonly canvas: HTMLCanvasElement;
  readonly #renderer: Renderer;
  readonly #root = new Container();
  readonly #water = new Sprite();
  readonly #scenery = new Graphics();
  readonly #paths = new Graphics();
  readonly #ghost = new Figure("ghost");
  readonly #bait = new Figure("bait");
  readonly #lens = new Container();
  readonly #lensDisc = new Graphics();
  readonly #lensBait = new Figure("bait");
  readonly #over = new Graphics();
  readonly #rulers = new Graphics();
  readonly #labels: Labels;
  #palette: Palette;
  #size: Size;
  #ratio: number;

  /**
   * A painter on WebGL or on the plain 2D canvas. WebGL that the browser computes without a graphics processor is
   * refused unless `software`: the 2D canvas then draws the same picture ten times as fast.
   * @throws Error where the browser does not offer it
   */
  static async make(
    kind: Kind,
    size: Size,
    ratio: number,
    palette: Palette,
    software = false,
  ): Promise<Painter> {
    if (kind === "webgl" && !software && computedInSoftware())
      throw new Error("WebGL here runs without a graphics processor");
    const canvas = document.createElement("canvas");
    // A strict preference each: left to itself the library would try WebGPU next, whose canvas stays blank here.
    const renderer = await autoDetectRenderer({
      preference: [kind],
      canvas,
      width: size.width,
      height: size.height,
      resolution: ratio,
      autoDensity: true,
      antialias: true,
      backgroundColor: numberOf(palette.waterDeep),
      // The stage has its own label and its own pointer handling.
      eventMode: "none",
      eventFeatures: { move: false, globalMove: false, click: false, wheel: false },
      accessibilityOptions: { enabledByDefault: false, activateOnTab: false },
    });
    return new Painter(kind, canvas, renderer, size, ratio, palette);
  }

  private constructor(
    kind: Kind,
    canvas: HTMLCanvasElement,
    renderer: Renderer,
    size: Size,
    ratio: number,
    palette: Palette,
  ) {
    this.kind = kind;
    this.canvas = canvas;
    this.#renderer = renderer;
    this.#size = size;
    this.#ratio = ratio;
    this.#palette = palette;
    this.#labels = new Labels(palette, ratio);
    this.#lens.addChild(this.#lensDisc, this.#lensBait.container);
    this.#root.addChild(
      this.#water,
      this.#scenery,
      this.#paths,
      this.#ghost.container,
      this.#bait.container,
      this.#lens,
      this.#over,
      this.#rulers,
      this.#labels.container,
    );
    this.setPalette(palette);
  }

  setPalette(palette: Palette): void {
    this.#palette = palette;
    this.#renderer.background.color = numberOf(palette.waterDeep);
    const strip = document.createElement("canvas");
    strip.width = 2;
    strip.height = 128;
    const context = strip.getContext("2d");
    if (context) {
      for (let i = 0; i < 128; i++) {
        // Eased, so that most of the change lies in the upper water where baits swim.
        context.fillStyle = cssOf(mix(palette.waterTop, palette.waterDeep, Math.sqrt(i / 127)));
        context.fillRect(0, i, 2, 1);
      }
    }
    this.#water.texture.destroy(this.#water.texture !== Texture.EMPTY);
    this.#water.texture = Texture.from(strip, true);
    this.#labels.reset(palette, this.#ratio);
  }

  resize(size: Size, ratio: number): void {
    this.#size = size;
    if (ratio !== this.#ratio) {
      this.#ratio = ratio;
      this.#labels.reset(this.#palette, ratio);
    }
    this.#renderer.resize(size.width, size.height, ratio);
  }

  /** The picture as an image file's data, at the size of the stage. */
  async image(): Promise<Blob> {
    const shot = this.#renderer.extract.canvas({
      target: this.#root,
      frame: new Rectangle(0, 0, this.#size.width, this.#size.height),
      resolution: this.#ratio,
      clearColor: numberOf(this.#palette.waterDeep),
    }) as HTMLCanvasElement;
    return new Promise((done, failed) =>
      shot.toBlob((blob) =>
        blob ? done(blob) : failed(new Error("The browser could not make an image of the stage")),
      ),
    );
  }

  destroy(): void {
    this.#root.destroy({ children: true, texture: true });
    this.#renderer.destroy({ removeView: true });
  }

  draw(picture: Picture): void {
    const { bait, ghost, options, view, moving } = picture;
    const size = this.#size;
    const at = (p: Vec): { x: number; y: number } => toScreen(view, size, p);
    this.#labels.begin();
    this.#rulers.clear();
    this.#over.clear();
    this.#paths.clear();
    this.#drawScenery(picture);
    this.#drawPaths(picture);
    this.#ghost.container.visible = ghost !== null;
    if (ghost) {
      this.#ghost.pose(ghost.scene, ghost.snapshot, options.xray, this.#palette, view.scale, moving, at);
      this.#pointTo(ghost, view, "pinned");
    }
    this.#bait.pose(bait.scene, bait.snapshot, options.xray, this.#palette, view.scale, moving, at);
    this.#pointTo(bait, view, "bait");
    const small = bait.scene.length * view.scale < LENS_BELOW;
    this.#drawLens(picture, small);
    if (!small) {
      const rulers = rulerSizes(size);
      const placer = new Placer({
        x0: rulers.left + 4,
        y0: 4,
        x1: size.width - 4,
        y1: size.height - rulers.bottom - 4,
      });
      // The depth's pointer at the scale keeps its place.
      placer.block(rulers.left + 30, at(bait.snapshot.eye).y, 60, 20);
      if (options.labels) this.#drawPitch(picture, placer);
      for (const p of [bait.snapshot.G, bait.snapshot.B]) placer.block(at(p).x, at(p).y, 13, 13);
      if (options.forces) this.#drawForces(picture, at, pxPerRootNewton(size.width, size.height), placer);
      this.#drawCentres(bait, at, placer);
    }
    this.#drawRulers(picture);
    this.#labels.end();
    this.#renderer.render({ container: this.#root });
  }

  #drawScenery({ bait, view }: Picture): void {
    const palette = this.#palette;
    const { width, height } = this.#size;
    const g = this.#scenery.clear();
    const surface = toScreen(view, this.#size, { x: 0, z: 0 }).y;
    const depth = bait.scene.depth;
    const tinted = Number.isFinite(depth) ? depth : 10;
    this.#water.position.set(0, surface);
    this.#water.setSize(width, Math.max(1, tinted * view.scale));
    if (surface > 0) g.rect(0, 0, width, Math.min(height, surface)).fill({ color: numberOf(palette.sky) });
    this.#drawGrid(view, surface);
    if (Number.isFinite(depth)) {
      const floor = toScreen(view, this.#size, { x: 0, z: -depth }).y;
      if (floor < height) {
        const top = Math.max(0, floor);
        g.rect(0, top, width, height - top).fill({ color: numberOf(palette.floor) });
        // Earth is marked by short strokes under its line, as in a section.
        const shift = (((-view.x * view.scale) % 14) + 14) % 14;
        for (let x = shift - 14; x < width + 14; x += 14) g.moveTo(x, floor + 9).lineTo(x + 8, floor + 1);
        g.stroke({ color: numberOf(palette.inkSoft), width: 0.75, alpha: 0.6 });
        g.moveTo(0, floor)
          .lineTo(width, floor)
          .stroke({ color: numberOf(palette.ink), width: 1.5 });
      }
    }
    if (surface > -4 && surface < height + 4) {
      const ink = { color: numberOf(palette.ink), width: 1.25 };
      g.moveTo(0, surface).lineTo(width, surface).stroke(ink);
      // The water level's sign of technical drawing: a triangle on the line, strokes under it.
      const x = rulerSizes(this.#size).left + 26;
      g.poly([x - 6, surface - 10, x + 6, surface - 10, x, surface - 0.5]).stroke({
        color: ink.color,
        width: 1,
      });
      for (const [k, half] of [7, 4.5, 2].entries())
        g.moveTo(x - half, surface + 4 + 3 * k).lineTo(x + half, surface + 4 + 3 * k);
      g.stroke({ color: ink.color, width: 0.75, alpha: 0.7 });
    }
  }

  /** A faint grid fixed to the water: it is what moves when the camera goes with the bait. */
  #drawGrid(view: View, surface: number): void {
    const { width, height } = this.#size;
    const step = niceStep(view.scale, 34);
    const major = niceStep(view.scale, 150);
    const g = this.#scenery;
    const top = Math.max(0, surface);
    const left = view.x - width / 2 / view.scale;
    const right = view.x + width / 2 / view.scale;
    const low = view.z - height / 2 / view.scale;
    const high = Math.min(0, view.z + height / 2 / view.scale);
    for (const [every, alpha] of [
      [step, 0.055],
      [major, 0.085],
    ] as const) {
      for (const x of ticksBetween(left, right, every)) {
        const px = toScreen(view, this.#size, { x, z: 0 }).x;
        g.moveTo(px, top).lineTo(px, height);
      }
      for (const z of ticksBetween(low, high, every)) {
        const py = toScreen(view, this.#size, { x: 0, z }).y;
        g.moveTo(0, py).lineTo(width, py);
      }
      g.stroke({ color: numberOf(this.#palette.ink), width: 1, alpha });
    }
  }

  #drawPaths({ bait, trace, view }: Picture): void {
    const g = this.#paths;
    const palette = this.#palette;
    const at = (p: Vec): { x: number; y: number } => toScreen(view, this.#size, p);
    // The trace fades towards its older end, in steps that one stroke each can draw.
    const steps = Math.min(20, trace.length - 1);
    for (let k = 0; k < steps; k++) {
      const from = Math.floor((k * (trace.length - 1)) / steps);
      const to = Math.floor(((k + 1) * (trace.length - 1)) / steps);
      const piece = trace.slice(from, to + 1).map(at);
      if (piece.length > 1)
        g.poly(piece, false).stroke({
          color: numberOf(palette.accent),
          width: 1.75,
          alpha: 0.08 + 0.62 * ((k + 1) / steps),
          join: "round",
        });
    }
    const { line, slack } = bait.snapshot;
    if (line.length < 2) return;
    const width = Math.max(1.1, (bait.scene.rod?.lineDiameter ?? 0) * view.scale);
    const style = { color: numberOf(palette.ink), width, alpha: 0.85, join: "round" as const };
    const margin = 0.5 * Math.hypot(this.#size.width, this.#size.height);
    const near = clipped(line.map(at), { width: this.#size.width, height: this.#size.height }, margin);
    for (const piece of near) {
      if (slack)
        for (const dash of dashed(
          piece.map((p) => ({ x: p.x, z: p.y })),
          7,
          5,
        ))
          g.poly(
            dash.map((p) => ({ x: p.x, y: p.z })),
            false,
          );
      else g.poly(piece, false);
      g.stroke(style);
    }
    const tip = line[line.length - 1];
    if (!tip) return;
    const p = at(tip);
    if (p.x < -20 || p.x > this.#size.width + 20 || p.y < -20 || p.y > this.#size.height + 20) return;
    g.circle(p.x, p.y, 3.5)
      .fill({ color: numberOf(palette.paper) })
      .stroke({ color: numberOf(palette.ink), width: 1.5 });
    this.#labels.put("rod tip", p.x - 8, p.y, {
      size: 12,
      colour: palette.ink,
      anchorX: 1,
      anchorY: 0.5,
      halo: palette.sky,
    });
  }

  #drawForces(
    { bait, options }: Picture,
    at: (p: Vec) => { x: number; y: number },
    unit: number,
    placer: Placer,
  ): void {
    const g = this.#over;
    const ink = numberOf(this.#palette.dark ? this.#palette.paper : this.#palette.ink);
    const arrows = bait.snapshot.forces.flatMap(({ key, at: point, force }) => {
      const arrow = arrowOf(at(point), force, unit);
      return arrow ? [{ arrow, force, words: forceWords(key), size: Math.hypot(force.x, force.z) }] : [];
    });
    // Long ones first, so that a short one on the same line stays in sight.
    arrows.sort((a, b) => b.size - a.size);
    for (const { arrow, words } of arrows) {
      const color = this.#shown(words.colour);
      // A dark edge keeps every colour of the palette, yellow too, apart from paper and water.
      g.moveTo(arrow.from.x, arrow.from.y)
        .lineTo(arrow.neck.x, arrow.neck.y)
        .stroke({ color: ink, width: 4.5, cap: "round" });
      g.poly([...arrow.head]).stroke({ color: ink, width: 1.8, join: "round" });
      g.moveTo(arrow.from.x, arrow.from.y).lineTo(arrow.neck.x, arrow.neck.y).stroke({ color, width: 2.75 });
      g.poly([...arrow.head]).fill({ color });
    }
    for (const { arrow, force, size, words } of arrows) {
      const text =
        options.labels && this.#size.width >= 520 ? `${words.letter} ${forceText(size)}` : words.letter;
      const spot = placer.place(arrow.to, Math.atan2(force.z, force.x), 7.8 * text.length + 2, 15);
      this.#labels.put(text, spot.x, spot.y, {
        size: 13,
        bold: true,
        colour: this.#palette.ink,
        anchorX: 0.5,
        anchorY: 0.5,
        halo: this.#palette.paper,
      });
    }
    const shown = arrows.map((a) => a.words).sort((a, b) => a.letter.localeCompare(b.letter));
    if (shown.length > 0) this.#drawForceKey(unit, shown);
  }

  /** A force's colour; black turns to white on dark paper, as ink does. */
  #shown(colour: string): number {
    const value = Number.parseInt(colour.slice(1), 16);
    return value === 0 && this.#palette.dark ? 0xffffff : value;
  }

  /** Two rows above the distance scale: bars of round forces (lengths go with the root), and the letters' names. */
  #drawForceKey(unit: number, shown: readonly ForceLegend[]): void {
    const { width, height } = this.#size;
    const palette = this.#palette;
    const g = this.#over;
    const rulers = rulerSizes(this.#size);
    const left = rulers.left + 10;
    const bottom = height - rulers.bottom;
    const small = { size: 11, anchorX: 0, anchorY: 0.5, halo: mix(palette.waterTop, palette.waterDeep, 0.5) };
    // The names in as many rows as they need, the last row lowest.
    const rows: { readonly legend: ForceLegend; readonly x: number }[][] = [[]];
    let x = left;
    for (const legend of width >= 640 ? shown : []) {
      const wide = 27 + 6.4 * legend.label.length;
      if (x + wide > width - 8) {
        rows.push([]);
        x = left;
      }
      rows.at(-1)?.push({ legend, x });
      x += wide + 14;
    }
    const ink = numberOf(palette.dark ? palette.paper : palette.ink);
    rows.forEach((row, i) => {
      const y = bottom - 11 - 16 * (rows.length - 1 - i);
      for (const { legend, x: at } of row) {
        g.rect(at, y - 4.5, 9, 9)
          .fill({ color: this.#shown(legend.colour) })
          .stroke({ color: ink, width: 1 });
        this.#labels.put(legend.letter, at + 13, y, { ...small, colour: palette.ink, bold: true });
        this.#labels.put(legend.label, at + 27, y, { ...small, colour: palette.ink });
      }
    });
    const barsY = bottom - 12 - (rows[0]?.length ? 16 * rows.length : 0);
    x = left;
    for (const bar of arrowKey(unit, 0.2 * width)) {
      g.moveTo(x, barsY).lineTo(x + bar.length, barsY);
      for (const end of [x, x + bar.length]) g.moveTo(end, barsY - 3).lineTo(end, barsY + 3);
      const text = `${bar.newton} N`;
      this.#labels.put(text, x + bar.length + 5, barsY, { ...small, colour: palette.ink });
      x += bar.length + 14 + 6.4 * text.length;
    }
    g.stroke({ color: numberOf(palette.ink), width: 1.5 });
    this.#labels.put("length ∝ √force", x, barsY, { ...small, colour: palette.inkSoft });
  }

  /** G as the quartered disc of engineering drawings, B as a ring; each with its letter. */
  #drawCentres(bait: Posed, at: (p: Vec) => { x: number; y: number }, placer: Placer): void {
    const g = this.#over;
    const palette = this.#palette;
    const ink = numberOf(palette.ink);
    const paper = numberOf(palette.paper);
    const G = at(bait.snapshot.G);
    const B = at(bait.snapshot.B);
    g.circle(B.x, B.y, 5.5).fill({ color: paper }).stroke({ color: ink, width: 1.5 });
    g.circle(B.x, B.y, 1.6).fill({ color: ink });
    g.circle(G.x, G.y, 6).fill({ color: paper });
    for (const start of [0, Math.PI])
      g.moveTo(G.x, G.y)
        .arc(G.x, G.y, 6, start, start + Math.PI / 2)
        .closePath()
        .fill({ color: ink });
    g.circle(G.x, G.y, 6).stroke({ color: ink, width: 1.5 });
    for (const [letter, p, direction] of [
      ["G", G, 0],
      ["B", B, Math.PI],
    ] as const) {
      const spot = placer.place(p, direction, 12, 15, 9);
      this.#labels.put(letter, spot.x, spot.y, {
        size: 14,
        bold: true,
        colour: palette.ink,
        halo: palette.paper,
        anchorX: 0.5,
        anchorY: 0.5,
      });
    }
  }

  /** The pitch as an angle between a level line and the datum line, drawn ahead of the nose. */
  #drawPitch({ bait, view }: Picture, placer: Placer): void {
    const { scene, snapshot } = bait;
    const g = this.#over;
    const palette = this.#palette;
    const middle = placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch);
    const c = toScreen(view, this.#size, middle);
    const radius = 0.62 * scene.length * view.scale;
    if (radius > 0.49 * this.#size.width) return;
    const ink = numberOf(palette.inkSoft);
    const tip = (angle: number, r: number): { x: number; y: number } => ({
      x: c.x + r * Math.cos(angle),
      y: c.y - r * Math.sin(angle),
    });
    const a = tip(0, 0.9 * radius);
    const b = tip(0, 1.04 * radius);
    g.moveTo(a.x, a.y).lineTo(b.x, b.y).stroke({ color: ink, width: 1 });
    const d = tip(snapshot.pitch, 0.9 * radius);
    const e = tip(snapshot.pitch, 1.04 * radius);
    g.moveTo(d.x, d.y).lineTo(e.x, e.y).stroke({ color: ink, width: 1 });
    const from = tip(0, radius);
    g.moveTo(from.x, from.y)
      .arc(c.x, c.y, radius, 0, -snapshot.pitch, snapshot.pitch > 0)
      .stroke({ color: ink, width: 1 });
    const degrees = (snapshot.pitch * 180) / Math.PI;
    const where = tip(snapshot.pitch / 2, 1.04 * radius + 4);
    placer.block(where.x + 22, where.y, 48, 16);
    this.#labels.put(`${tickText(degrees, 0.1)}°`, where.x, where.y, {
      size: 13,
      colour: palette.ink,
      anchorX: 0,
      anchorY: 0.5,
      halo: palette.paper,
    });
  }

  /** Where a bait is out of the picture, a pointer at the edge says where it is. */
  #pointTo({ scene, snapshot }: Posed, view: View, name: string): void {
    const { width, height } = this.#size;
    const rulers = rulerSizes(this.#size);
    const p = toScreen(
      view,
      this.#size,
      placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch),
    );
    const reach = 0.5 * scene.length * view.scale;
    if (
      p.x > rulers.left - reach &&
      p.x < width + reach &&
      p.y > -reach &&
      p.y < height - rulers.bottom + reach
    )
      return;
    const left = rulers.left + 16;
    const right = width - 16;
    const top = 16;
    const bottom = height - rulers.bottom - 16;
    const c = { x: (left + right) / 2, y: (top + bottom) / 2 };
    const d = { x: p.x - c.x, y: p.y - c.y };
    const k = Math.min(
      d.x === 0 ? Infinity : Math.abs((d.x > 0 ? right - c.x : c.x - left) / d.x),
      d.y === 0 ? Infinity : Math.abs((d.y > 0 ? bottom - c.y : c.y - top) / d.y),
    );
    const tip = { x: c.x + k * d.x, y: c.y + k * d.y };
    const n = Math.hypot(d.x, d.y);
    const u = { x: d.x / n, y: d.y / n };
    const palette = this.#palette;
    const colour = name === "pinned" ? palette.ghost : palette.ink;
    this.#over
      .poly([
        tip.x,
        tip.y,
        tip.x - 12 * u.x - 6 * u.y,
        tip.y - 12 * u.y + 6 * u.x,
        tip.x - 12 * u.x + 6 * u.y,
        tip.y - 12 * u.y - 6 * u.x,
      ])
      .fill({ color: numberOf(colour) });
    const metres = n / view.scale;
    const text = `${name} ${metres < 1 ? `${(metres * 1000).toFixed(0)} mm` : `${metres.toFixed(1)} m`} away`;
    this.#labels.put(text, tip.x - 18 * u.x, tip.y - 18 * u.y, {
      size: 12,
      colour,
      halo: palette.paper,
      anchorX: u.x > 0.4 ? 1 : u.x < -0.4 ? 0 : 0.5,
      anchorY: u.y > 0.7 ? 1 : u.y < -0.7 ? 0 : 0.5,
    });
  }

  /** Far off, a lens shows the bait's attitude and its parts. */
  #drawLens(picture: Picture, shown: boolean): void {
    this.#lens.visible = shown;
    const g = this.#lensDisc.clear();
    if (!shown) return;
    const { bait, view, options } = picture;
    const { scene, snapshot } = bait;
    const { width, height } = this.#size;
    const rulers = rulerSizes(this.#size);
    const palette = this.#palette;
    const radius = Math.max(52, Math.min(110, 0.22 * Math.min(width, height)));
    const middle = placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch);
    const p = toScreen(view, this.#size, middle);
    const c = { x: width - radius - 14, y: height - rulers.bottom - radius - 12 };
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
    this.#lensBait.pose(scene, snapshot, options.xray, palette, scale, false, lensAt);
    if (options.labels)
      this.#labels.put(`${tickText((snapshot.pitch * 180) / Math.PI, 0.1)}°`, c.x, c.y + radius - 12, {
        size: 12,
        colour: palette.ink,
        halo: palette.paper,
        anchorX: 0.5,
        anchorY: 0.5,
      });
  }

  #drawRulers({ bait, view }: Picture): void {
    const g = this.#rulers;
    const palette = this.#palette;
    const { width, height } = this.#size;
    const { left, bottom } = rulerSizes(this.#size);
    const ink = numberOf(palette.ink);
    const small = width < 520 ? 10.5 : 11.5;
    g.rect(0, 0, left, height).fill({ color: numberOf(palette.paper), alpha: 0.9 });
    g.rect(left, height - bottom, width - left, bottom).fill({ color: numberOf(palette.paper), alpha: 0.9 });
    g.moveTo(left, 0)
      .lineTo(left, height - bottom)
      .lineTo(width, height - bottom)
      .stroke({ color: ink, width: 1, alpha: 0.55 });
    const text = { size: small, colour: palette.inkSoft };
    const step = niceStep(view.scale, 44);
    const fine = niceStep(view.scale, 8);
    const low = view.z - height / 2 / view.scale;
    const high = view.z + height / 2 / view.scale;
    for (const z of ticksBetween(low, high, fine)) {
      const y = toScreen(view, this.#size, { x: 0, z }).y;
      if (y < height - bottom) g.moveTo(left - 4, y).lineTo(left, y);
    }
    for (const z of ticksBetween(low, high, step)) {
      const y = toScreen(view, this.#size, { x: 0, z }).y;
      if (y > height - bottom - 8 || y < 22) continue;
      g.moveTo(left - 8, y).lineTo(left, y);
      this.#labels.put(tickText(z === 0 ? 0 : -z, step), left - 10, y, { ...text, anchorX: 1, anchorY: 0.5 });
    }
    const x0 = view.x - (width / 2 - left) / view.scale;
    const x1 = view.x + width / 2 / view.scale;
    for (const x of ticksBetween(x0, x1, fine)) {
      const px = toScreen(view, this.#size, { x, z: 0 }).x;
      g.moveTo(px, height - bottom).lineTo(px, height - bottom + 3);
    }
    const wide = niceStep(view.scale, 84);
    for (const x of ticksBetween(x0, x1, wide)) {
      const px = toScreen(view, this.#size, { x, z: 0 }).x;
      if (px < left + 16 || px > width - 52) continue;
      g.moveTo(px, height - bottom).lineTo(px, height - bottom + 6);
      this.#labels.put(tickText(x, wide), px, height - bottom + 7, { ...text, anchorX: 0.5, anchorY: 0 });
    }
    g.stroke({ color: ink, width: 1, alpha: 0.55 });
    this.#labels.put("depth m", 4, 4, { ...text, anchorX: 0, anchorY: 0 });
    this.#labels.put("m", width - 6, height - bottom + 7, { ...text, anchorX: 1, anchorY: 0 });
    // The tie eye's depth is the depth that every readout means.
    const depth = -bait.snapshot.eye.z;
    const y = toScreen(view, this.#size, bait.snapshot.eye).y;
    if (y > 10 && y < height - bottom - 8) {
      const finest = Math.max(step / 10, 1e-4);
      const words = tickText(depth, finest);
      const w = 6.6 * Math.max(words.length, decimalsOf(finest) + 2) + 8;
      g.poly([left + 1, y, left + 8, y - 9, left + 8 + w, y - 9, left + 8 + w, y + 9, left + 8, y + 9]).fill({
        color: ink,
        alpha: 0.92,
      });
      this.#labels.put(words, left + 8 + w / 2, y, {
        size: 12,
        bold: true,
        colour: palette.paper,
        anchorX: 0.5,
        anchorY: 0.5,
      });
    }
  }
}

/** Pieces of a polyline that come within `margin` of the screen: far ends of a long line would only cost. */
function clipped(
  path: readonly { x: number; y: number }[],
  size: Size,
  margin: number,
): { x: number; y: number }[][] {
  const pieces: { x: number; y: number }[][] = [];
  let piece: { x: number; y: number }[] = [];
  let a: { x: number; y: number } | undefined;
  const low = { x: -margin, y: -margin };
  const high = { x: size.width + margin, y: size.height + margin };
  for (const b of path) {
    if (a) {
      // Liang and Barsky's clipping of a segment to a rectangle.
      let t0 = 0;
      let t1 = 1;
      for (const axis of ["x", "y"] as const) {
        const d = b[axis] - a[axis];
        const near = low[axis] - a[axis];
        const far = high[axis] - a[axis];
        if (d === 0) {
          if (near > 0 || far < 0) t1 = -1;
        } else {
          t0 = Math.max(t0, Math.min(near / d, far / d));
          t1 = Math.min(t1, Math.max(near / d, far / d));
        }
      }
      if (t0 <= t1) {
        const at = (t: number, from: { x: number; y: number }): { x: number; y: number } => ({
          x: from.x + (b.x - from.x) * t,
          y: from.y + (b.y - from.y) * t,
        });
        if (piece.length === 0 || t0 > 0) {
          if (piece.length > 1) pieces.push(piece);
          piece = [at(t0, a)];
        }
        piece.push(at(t1, a));
        if (t1 < 1) {
          pieces.push(piece);
          piece = [];
        }
      } else if (piece.length > 1) {
        pieces.push(piece);
        piece = [];
      } else piece = [];
    }
    a = b;
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}

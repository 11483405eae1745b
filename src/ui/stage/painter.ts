import "pixi.js/unsafe-eval"; // shaders set up without eval: the page's content security policy forbids it
import "pixi.js/graphics"; // what the stage draws with: see `skipExtensionImports`
import "pixi.js/text";
import {
  autoDetectRenderer,
  Container,
  Graphics,
  Rectangle,
  type Renderer,
  Sprite,
  Texture,
  Ticker,
} from "pixi.js";
import type { Vec } from "../../model/base";
import { rulerSizes, toScreen, type Size, type View } from "./camera";
import { Figure } from "./figure";
import { drawForces } from "./forces";
import { placed } from "./geometry";
import { Labels } from "./labels";
import { Lens } from "./lens";
import { centreLetters, drawCentres, drawPitch, pointTo } from "./notes";
import { cssOf, mix, numberOf, type Palette } from "./palette";
import { drawPaths } from "./paths";
import { Placer } from "./placer";
import { drawRulers } from "./rulers";
import { drawScenery } from "./scenery";
import type { Sheet } from "./sheet";
import { RIVAL_DASH, type Posed, type Rival, type StageOptions } from "./types";

/** Everything that one picture shows. */
export interface Picture {
  readonly bait: Posed;
  readonly ghost: Posed | null;
  readonly rivals: readonly Rival[];
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

/** Depth over which water without a floor takes its full tint, m. */
const OPEN_WATER = 10;

/** True where the browser says that its WebGL is computed by the processor (or tells nothing of WebGL at all). */
function computedInSoftware(): boolean {
  const gl = document.createElement("canvas").getContext("webgl2", { failIfMajorPerformanceCaveat: true });
  if (!gl) return true;
  const info = gl.getExtension("WEBGL_debug_renderer_info");
  const name = String(info ? gl.getParameter(info.UNMASKED_RENDERER_WEBGL) : gl.getParameter(gl.RENDERER));
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

// The library's housekeeping has a clock of its own that would never rest: it ticks with the pictures instead.
Ticker.system.autoStart = false;
Ticker.system.stop();

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
  readonly #rivals = Object.entries(RIVAL_DASH).map(([letter, dash]) => ({
    letter,
    figure: new Figure("ghost", dash),
  }));
  /** The palette with each variant's colour for ghosts. */
  #tinted = new Map<Rival["letter"], Palette>();
  readonly #bait = new Figure("bait");
  readonly #lens = new Lens();
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
      // Not its pointer handling, accessibility layer and filters: the stage has its own, and needs none.
      skipExtensionImports: true,
      canvas,
      width: size.width,
      height: size.height,
      resolution: ratio,
      autoDensity: true,
      antialias: true,
      backgroundColor: numberOf(palette.waterDeep),
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
    this.#root.addChild(
      this.#water,
      this.#scenery,
      this.#paths,
      this.#ghost.container,
      ...this.#rivals.map(({ figure }) => figure.container),
      this.#bait.container,
      this.#lens.container,
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
    if (this.#water.texture !== Texture.EMPTY) this.#water.texture.destroy(true);
    this.#water.texture = Texture.from(strip, true);
    this.#labels.reset(palette, this.#ratio);
    this.#tinted = new Map(
      (["A", "B", "C", "D"] as const).map((letter) => [
        letter,
        { ...palette, ghost: palette[`variant${letter}`] },
      ]),
    );
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

  draw({ bait, ghost, rivals, trace, options, view, moving }: Picture): void {
    const size = this.#size;
    const palette = this.#palette;
    const labels = this.#labels;
    const rulers = rulerSizes(size);
    const sheet: Sheet = { size, rulers, view, palette, labels, at: (p) => toScreen(view, size, p) };
    labels.begin();
    for (const g of [this.#scenery, this.#paths, this.#over, this.#rulers]) g.clear();
    const { depth } = bait.scene;
    this.#water.position.set(0, sheet.at({ x: 0, z: 0 }).y);
    this.#water.setSize(size.width, Math.max(1, (Number.isFinite(depth) ? depth : OPEN_WATER) * view.scale));
    drawScenery(this.#scenery, sheet, depth);
    drawPaths(this.#paths, sheet, bait, trace);
    this.#ghost.container.visible = ghost !== null;
    if (ghost) {
      this.#ghost.pose(ghost.scene, ghost.snapshot, options.xray, palette, view.scale, moving, sheet.at);
      pointTo(this.#over, sheet, ghost, "pinned", "ghost");
    }
    for (const { letter, figure } of this.#rivals) {
      const rival = rivals.find((one) => one.letter === letter);
      figure.container.visible = rival !== undefined;
      if (rival !== undefined) this.#drawRival(figure, sheet, rival, options.xray, moving);
    }
    this.#bait.pose(bait.scene, bait.snapshot, options.xray, palette, view.scale, moving, sheet.at);
    const away = pointTo(this.#over, sheet, bait, "bait");
    const small = bait.scene.length * view.scale < LENS_BELOW;
    if (small) this.#lens.draw(sheet, bait, options.xray, options.labels);
    else this.#lens.hide();
    if (!small && !away) this.#drawNotes(sheet, bait, options);
    drawRulers(this.#rulers, sheet, bait);
    labels.end();
    this.#renderer.render({ container: this.#root });
    Ticker.system.update();
  }

  /** Another variant: its outline in its own dashes and colour, with its letter over it. */
  #drawRival(figure: Figure, sheet: Sheet, rival: Rival, xray: boolean, moving: boolean): void {
    const { scene, snapshot, letter } = rival;
    const { scale } = sheet.view;
    const palette = this.#tinted.get(letter) ?? this.#palette;
    figure.pose(scene, snapshot, xray, palette, scale, moving, sheet.at);
    if (pointTo(this.#over, sheet, rival, letter, `variant${letter}`)) return;
    const top = sheet.at(
      placed({ x: -0.85 * scene.length, z: 0.12 * scene.length }, snapshot.nose, snapshot.pitch),
    );
    sheet.labels.put(letter, top.x, top.y, {
      size: 14,
      bold: true,
      colour: palette.ghost,
      halo: palette.paper,
      anchorX: 0.5,
      anchorY: 1,
    });
  }

  /** Pitch, forces, G and B, each label where it finds room. */
  #drawNotes(sheet: Sheet, bait: Posed, options: StageOptions): void {
    const { size, rulers, at } = sheet;
    const { G, B, eye } = bait.snapshot;
    const placer = new Placer({
      x0: rulers.left + 4,
      y0: 4,
      x1: size.width - 4,
      y1: size.height - rulers.bottom - 4,
    });
    // The depth's pointer at the scale keeps its place, and so do the marks of G and B.
    placer.block(rulers.left + 30, at(eye).y, 60, 20);
    if (options.labels) drawPitch(this.#over, sheet, bait, placer);
    for (const p of [G, B]) placer.block(at(p).x, at(p).y, 13, 13);
    for (const { x, y } of centreLetters(sheet, bait)) placer.block(x, y, 12, 15);
    if (options.forces) drawForces(this.#over, sheet, bait, options.labels, placer);
    drawCentres(this.#over, sheet, bait);
  }
}

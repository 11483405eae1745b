import "pixi.js/graphics"; // what the stage draws with: see `skipExtensionImports`
import "pixi.js/text";
import {
  AbstractRenderer,
  autoDetectRenderer,
  Container,
  Graphics,
  Rectangle,
  type Renderer,
  Sprite,
  Texture,
  Ticker,
} from "pixi.js";
import {
  cssOf,
  frameOf,
  withStrip,
  groundOf,
  layersOf,
  mix,
  numberOf,
  type Caption,
  type Palette,
  type Picture,
  type Posed,
  type Size,
  RIVAL_DASH,
  type View,
} from "../../drawing";
import { Figure } from "./figure";
import { Labels } from "./labels";
import { drawMarks } from "./paint";

/** Depth over which water without a floor takes its full tint, m. */
const OPEN_WATER = 10;

// The library asks for `eval`, which the page's content security policy forbids, before it makes any renderer. Only its shaders
// need it, and a 2D canvas has none.
Object.assign(AbstractRenderer.prototype, { _unsafeEvalCheck: () => undefined });

// The library's housekeeping has a clock of its own that would never rest: it ticks with the pictures instead.
Ticker.system.autoStart = false;
Ticker.system.stop();

/** Draws pictures on a canvas of its own. Knows no clock: it draws when told. */
export class Painter {
  readonly canvas: HTMLCanvasElement;
  readonly #renderer: Renderer;
  readonly #root = new Container();
  readonly #water = new Sprite();
  readonly #under = new Graphics();
  readonly #ghost = new Figure("ghost");
  readonly #rivals = (["A", "B", "C", "D"] as const).map((letter) => ({
    letter,
    figure: new Figure(`variant${letter}`, RIVAL_DASH[letter]),
  }));
  readonly #bait = new Figure("ink");
  readonly #glass = new Graphics();
  readonly #enlarged = new Figure("ink");
  readonly #over = new Graphics();
  readonly #labels: Labels;
  #palette: Palette;
  #size: Size;
  #ratio: number;

  /**
   * A painter on the plain 2D canvas. The library's WebGL half is left out: it would add a tenth to what the page loads, needs
   * a way round the content security policy, and draws a picture of this size no better. Browsers give the 2D canvas to the
   * graphics processor by themselves.
   * @throws Error where the browser does not offer a 2D canvas
   */
  static async make(size: Size, ratio: number, palette: Palette): Promise<Painter> {
    const canvas = document.createElement("canvas");
    const renderer = await autoDetectRenderer({
      preference: ["canvas"],
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
    return new Painter(canvas, renderer, size, ratio, palette);
  }

  private constructor(
    canvas: HTMLCanvasElement,
    renderer: Renderer,
    size: Size,
    ratio: number,
    palette: Palette,
  ) {
    this.canvas = canvas;
    this.#renderer = renderer;
    this.#size = size;
    this.#ratio = ratio;
    this.#palette = palette;
    this.#labels = new Labels(palette, ratio);
    this.#root.addChild(
      this.#water,
      this.#under,
      this.#ghost.container,
      ...this.#rivals.map(({ figure }) => figure.container),
      this.#bait.container,
      this.#glass,
      this.#enlarged.container,
      this.#over,
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
  }

  resize(size: Size, ratio: number): void {
    this.#size = size;
    if (ratio !== this.#ratio) {
      this.#ratio = ratio;
      this.#labels.reset(this.#palette, ratio);
    }
    this.#renderer.resize(size.width, size.height, ratio);
  }

  /** Pixels of the picture in its frame. */
  get shotSize(): Size {
    const { width, height } = withStrip(this.#size);
    return { width: Math.round(width * this.#ratio), height: Math.round(height * this.#ratio) };
  }

  /** The picture on a canvas of its own: the stage as it is, in a frame that says what, when and at which scale. */
  shot(caption: Caption): HTMLCanvasElement {
    const { size, marks } = frameOf(this.#size, caption);
    const whole = new Container();
    const strip = new Graphics();
    const words = new Labels(this.#palette, this.#ratio);
    words.begin();
    drawMarks(strip, marks, this.#palette, 1, words);
    words.end();
    whole.addChild(this.#root, strip, words.container);
    try {
      return this.#renderer.extract.canvas({
        target: whole,
        frame: new Rectangle(0, 0, size.width, size.height),
        resolution: this.#ratio,
        clearColor: numberOf(this.#palette.waterDeep),
      }) as HTMLCanvasElement;
    } finally {
      whole.removeChild(this.#root);
      whole.destroy({ children: true });
    }
  }

  /** The same as an image file's data. */
  async image(caption: Caption): Promise<Blob> {
    const shot = this.shot(caption);
    const blob = await new Promise<Blob | null>((done) => shot.toBlob(done));
    if (blob === null) throw new Error("The browser could not make an image of the stage");
    return blob;
  }

  destroy(): void {
    this.#root.destroy({ children: true, texture: true });
    this.#renderer.destroy({ removeView: true });
  }

  /** Draws a picture. While the camera is on its way (`moving`), cheaper drawing will do. */
  draw(picture: Picture, view: View, moving: boolean): void {
    const { bait, ghost, rivals, shows } = picture;
    const size = this.#size;
    const palette = this.#palette;
    const labels = this.#labels;
    const ground = groundOf(view, size);
    const { under, lens, over } = layersOf(picture, ground);
    labels.begin();
    const layer = (g: Graphics, marks: typeof under): void => drawMarks(g.clear(), marks, palette, 1, labels);
    const pose = (figure: Figure, one: Posed | undefined | null): void => {
      figure.container.visible = one !== undefined && one !== null;
      if (one) figure.pose(one, shows.xray, palette, view.scale, moving, ground.at);
    };
    const { depth } = bait.scene;
    this.#water.position.set(0, ground.at({ x: 0, z: 0 }).y);
    this.#water.setSize(size.width, Math.max(1, (Number.isFinite(depth) ? depth : OPEN_WATER) * view.scale));
    layer(this.#under, under);
    pose(this.#ghost, ghost);
    for (const { letter, figure } of this.#rivals)
      pose(
        figure,
        rivals.find((one) => one.letter === letter),
      );
    pose(this.#bait, bait);
    this.#glass.visible = this.#enlarged.container.visible = lens !== null;
    if (lens) {
      layer(this.#glass, lens.under);
      const { nose, scale } = lens;
      const { nose: from } = bait.snapshot;
      this.#enlarged.pose(bait, shows.xray, palette, scale, false, (p) => ({
        x: nose.x + (p.x - from.x) * scale,
        y: nose.y - (p.z - from.z) * scale,
      }));
    }
    layer(this.#over, lens ? [...lens.over, ...over] : over);
    labels.end();
    this.#renderer.render({ container: this.#root });
    Ticker.system.update();
  }
}

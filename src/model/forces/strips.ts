import { square, type Vec } from "../base";
import { fit } from "../hydrostatics";
import { sectionArea, sectionCentroidZ, type Shape } from "../shape";
import type { EllipsoidCoefficients } from "./ellipsoid";
import { dragFactor, evenNodes, nodesFor, sectionAtNode } from "./strip-nodes";
import type { Strip } from "./types";

/** Strips and the added mass they carry, over water density. */
export interface Strips {
  readonly strips: readonly Strip[];
  /** Σ a33′ds/ρ, m³. */
  readonly heave: number;
  /** The same with arms about the strips' centre x₃₃ (m forward of G), and the pitch value there, m⁵. */
  readonly centreX: number;
  readonly pitch: number;
}

/**
 * Cuts the body into strips at Gauss nodes in φ (s = L(1 − cos φ)/2), places relative to G.
 *
 * The strips' volumes are tilted by a few parts in 1e5 and their centroids shifted so that volume and centroid add up
 * to the body's own exactly. Heave added mass by strips: a33′ = ρπ·hw²·C_w, C_w = k_z r_z/r_y; in pitch about the strips'
 * centre C₅ Σ a33′(x − x₃₃)², C₅ = 5P/(k_z ρV r_x²) (docs/model.md §6.3), which is the same as moving each strip's arm
 * about x₃₃ by √C₅: `addedX`. So the whole is a sum of squares, and stays positive when strips leave the water.
 *
 * @param count of the strips; null: as many as the shape asks for
 * @param G of the rigid set, body frame
 */
export function cutStrips(
  shape: Shape,
  count: number | null,
  G: Vec,
  ellipsoid: EllipsoidCoefficients,
): Strips {
  if (count !== null && (!Number.isInteger(count) || count < 8 || count > 1024))
    throw new RangeError(`${count} strips along the body: give a whole number from 8 to 1024`);
  const rx = shape.length / 2;
  const ry = shape.maxHalfBreadth;
  const rz = shape.maxHeight / 2;
  const cw = (ellipsoid.kZ * rz) / ry;
  const c5 = (5 * ellipsoid.pitchPerVolume) / (ellipsoid.kZ * rx * rx);

  const nodes = count === null ? nodesFor(shape) : evenNodes(shape, count);
  const raw = nodes.map((node): Strip => {
    const { at, s, ds } = sectionAtNode(shape, node);
    const area = sectionArea(at);
    return {
      x: -s - G.x,
      ds,
      halfBreadth: at.halfBreadth,
      top: at.top - G.z,
      bottom: at.bottom - G.z,
      widest: at.widest - G.z,
      exponentAbove: at.exponentAbove,
      exponentBelow: at.exponentBelow,
      area,
      centroidZ: sectionCentroidZ(at) - G.z,
      shapeFactor: dragFactor(at),
      volume: area * ds,
      added: Math.PI * square(at.halfBreadth) * cw * ds,
      addedX: 0,
    };
  });

  const heave = raw.reduce((sum, p) => sum + p.added, 0);
  const centreX = raw.reduce((sum, p) => sum + p.added * p.x, 0) / heave;
  const pitch = c5 * raw.reduce((sum, p) => sum + p.added * square(p.x - centreX), 0);
  const reach = Math.sqrt(c5);
  const exact = fit(raw, shape, G);
  return {
    strips: raw.map((p) => {
      const volume = p.volume * (exact.level + exact.tilt * (p.x - exact.about));
      return { ...p, volume, centroidZ: p.centroidZ + exact.lift, addedX: centreX + reach * (p.x - centreX) };
    }),
    heave,
    centreX,
    pitch,
  };
}

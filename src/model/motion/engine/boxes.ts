import { BOX_MARGIN, type Body } from "./planck";

/** A body's boxes are updated when it has moved by this much, turning included, m. */
const STRIDE = BOX_MARGIN / 5;

/**
 * Skips the engine's update of a body's bounding boxes (its broad phase) until the body has moved by STRIDE. This misses no
 * contact, because a shape then sticks out of its wide box by STRIDE at most, and
 *
 *  - the ground's boxes are wider than the ground by more than that;
 *  - bodies that stay within `apart` of each other (balls and their chamber) may have boxes made at two different moments.
 *    For these boxes not to overlap, one body would have had to move by 2·margin − `apart` − stride between the two
 *    moments, and its own box would have been made anew after margin + stride. So `apart` must be below margin − 2 strides;
 *    else the boxes are updated in every step.
 *
 * @param apart greatest distance, in any direction, of bodies that meet and move together, m
 */
export function lookNowAndThen(bodies: readonly Body[], apart: number): void {
  if (!(apart < BOX_MARGIN - 2 * STRIDE)) return;
  for (const body of bodies) {
    const look = body.synchronizeFixtures.bind(body);
    const reach = reachOf(body);
    let { x, y } = body.getPosition();
    let angle = body.getAngle();
    body.synchronizeFixtures = () => {
      const at = body.getPosition();
      const turned = body.getAngle();
      const dx = at.x - x;
      const dy = at.y - y;
      const room = STRIDE - reach * Math.abs(turned - angle);
      if (room > 0 && dx * dx + dy * dy < room * room) return;
      x = at.x;
      y = at.y;
      angle = turned;
      look();
    };
  }
}

/** No point of a body's fixtures is farther than this from its origin, m. */
function reachOf(body: Body): number {
  const { x, y } = body.getPosition();
  let most = 0;
  for (let fixture = body.getFixtureList(); fixture !== null; fixture = fixture.getNext()) {
    const { lowerBound: low, upperBound: high } = fixture.getAABB(0);
    const dx = Math.max(x - low.x, high.x - x);
    const dy = Math.max(y - low.y, high.y - y);
    most = Math.max(most, Math.sqrt(dx * dx + dy * dy));
  }
  return most;
}

import { onBait } from "../../document";
import type { Box } from "../../document";
import type { Item } from "../../model/bait";
import { formatIn, formatNumber, fromSI } from "../../units";
import type { SheetJob } from "../job";
import { development } from "../templates/wire";
import { mmNumber, mmText } from "../templates/words";

/** What a row of the account is, in the words of whoever fetches it. */
function described({ compiled, scenario }: SheetJob, item: Item): string {
  const { spec, drawn } = compiled.bait;
  switch (item.group) {
    case "body":
      return `${spec.body.name}, a blank of at least ${mmNumber(drawn.length)} × ${mmNumber(drawn.maxHeight)} × ${mmText(2 * drawn.maxHalfBreadth)}`;
    case "balls": {
      const balls = spec.chambers[item.index]?.balls;
      return balls ? `${balls.count} balls of ${mmText(balls.diameter)}, ${balls.stuff.name}` : "";
    }
    case "ballast": {
      const one = spec.ballast[item.index];
      if (!one) return "";
      return item.filler > 0
        ? `${one.stuff.name}, inside, with ${formatIn(item.filler, "g", 2)} of filler`
        : `${one.stuff.name}, ${one.where}`;
    }
    case "wires": {
      const one = spec.wires[item.index];
      return one
        ? `${one.stuff.name}, ${mmText(one.diameter, 2)} thick, ${mmNumber(development(one).length)} long and eyes`
        : "";
    }
    case "bib": {
      const { bib } = spec;
      return bib
        ? `${bib.stuff.name}, ${mmText(bib.thickness)} thick, ${mmNumber(bib.length + bib.slot)} × ${mmText(bib.width)}`
        : "";
    }
    case "hangers": {
      if (item.part === "ring") return "split ring";
      const size = scenario.bait.hangers[item.index]?.hook?.size;
      return size === undefined ? "hook" : `hook, size ${size}`;
    }
    case "fittings": {
      const one = spec.fittings[item.index];
      return one ? `${one.stuff.name}, ${one.where}` : "";
    }
    case "coats": {
      const one = spec.coats[item.index];
      if (!one) return "";
      return one.thickness === null ? one.stuff.name : `${one.stuff.name}, ${mmText(one.thickness, 2)} thick`;
    }
    default:
      return "";
  }
}

/** The thing of the box that a row is, and how many are there; empty where there is none. */
function inBox(box: Box, job: SheetJob): (item: Item) => string {
  const taken = onBait(box.things, job.scenario.bait);
  return ({ group, index, part }) => {
    const i = taken.findIndex((list) =>
      list.some((one) => one.group === group && one.index === index && one.part === part),
    );
    const thing = box.things[i];
    return thing ? `${thing.name}: ${thing.count}` : "–";
  };
}

/** The parts list: name, what it is, its mass, and where a box is given what the box has of it. */
export function partRows(job: SheetJob): readonly (readonly string[])[] {
  const { bait } = job.compiled;
  const found = job.box === null ? null : inBox(job.box, job);
  return bait.items
    .filter((item) => item.group !== "corrections" && item.mass > 0)
    .map((item) => {
      // The blank is fetched whole: what is cut out of it comes with what it is cut for.
      const mass = item.group === "body" ? bait.bodyDensity * bait.shape.volume : item.mass;
      return [
        item.item,
        described(job, item),
        formatIn(mass, "g", 2),
        ...(found === null ? [] : [found(item)]),
      ];
    });
}

/** A mass (kg) in grams, without the unit. */
export const grams = (mass: number): string => formatNumber(fromSI(mass, "g"), 2);

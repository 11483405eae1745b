import { offerOf } from "../../stage";
import type { Offer } from "../../stage";
import { tableText } from "./table";
import type { DecimalMark } from "./table";

/** One thing of the view that can be saved. */
export interface Found {
  readonly what: string;
  readonly svg: SVGSVGElement | null;
  readonly offer: Offer;
}

/** Smaller ones are signs beside words, px. */
const LEAST = { width: 120, height: 40 };
/** A longer name is a summary of the whole figure. */
const LONGEST = 90;

const short = (text: string): string => {
  const [first = ""] = text.trim().split(/[:.]\s/);
  return first.length > LONGEST ? `${first.slice(0, LONGEST).trimEnd()}…` : first;
};

/** What a thing is called: its own name, that of what holds it, or the heading before it; else nothing. */
function nameOf(element: Element, place: Element): string {
  const caption = element.querySelector(":scope > caption")?.textContent ?? "";
  if (caption.trim() !== "") return short(caption);
  const title = element instanceof SVGElement ? (element.dataset["title"] ?? "") : "";
  if (title !== "") return short(title);
  for (let up: Element | null = element; up !== null && up !== place; up = up.parentElement) {
    // A slider over a picture says what it moves, not what the picture shows.
    if (up !== element && up.getAttribute("role") === "slider") continue;
    const own = up.getAttribute("aria-label") ?? up.querySelector(":scope > figcaption")?.textContent ?? "";
    if (own.trim() !== "") return short(own);
  }
  const before = [...place.querySelectorAll("h2, h3, h4")].filter(
    (one) => (one.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
  );
  return short(before.at(-1)?.textContent ?? "");
}

const seen = (element: Element): boolean => {
  const { width, height } = element.getBoundingClientRect();
  return width >= LEAST.width && height >= LEAST.height;
};

/**
 * All pictures and tables that a view shows now, in their order on the page. `decimal`: how it writes its numbers.
 * `unnamed`: what is called so has no name.
 */
export function found(place: Element, decimal: DecimalMark, unnamed: string): readonly Found[] {
  return [...place.querySelectorAll("svg, table, [data-renderer]")].flatMap((element): Found[] => {
    if (!seen(element)) return [];
    const offer = offerOf(element);
    const what = nameOf(element, place) || unnamed;
    if (element instanceof HTMLTableElement)
      return [{ what, svg: null, offer: offer ?? { csv: () => tableText(element, decimal) } }];
    if (element instanceof SVGSVGElement)
      // What stands in for the stage, or within another picture, is saved with it.
      return (element.parentElement?.closest("svg, [data-renderer]") ?? null) === null
        ? [{ what, svg: element, offer: offer ?? {} }]
        : [];
    return offer === undefined ? [] : [{ what, svg: null, offer }];
  });
}

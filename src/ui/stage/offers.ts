/** What an element of a view can be saved as, beyond what its own lines say. */
export interface Offer {
  /** Its picture as the text of an SVG file, where it is no SVG itself. */
  readonly svg?: (title: string) => string;
  readonly png?: (title: string) => Promise<Blob | null>;
  /** Its numbers as a table, every heading with its unit. */
  readonly csv?: () => string;
}

const offers = new WeakMap<Element, Offer>();

/** Lets whoever saves a view find the offer at its element. */
export const offering =
  (offer: Offer) =>
  (element: Element): void =>
    void offers.set(element, offer);

export const offerOf = (element: Element): Offer | undefined => offers.get(element);

/** Which view is open; it stands in the address, so a link and the back button work. */
export class ViewState {
  key = $state("");
  readonly #known: readonly string[];

  constructor(known: readonly string[], hash: string) {
    this.#known = known;
    this.follow(hash);
  }

  /** Takes the view from an address' hash; the first view where it names none. */
  follow(hash: string): void {
    const wanted = hash.replace(/^#/, "");
    this.key = this.#known.find((one) => one === wanted) ?? this.#known[0] ?? "";
  }

  show(key: string): void {
    if (key === this.key) return;
    this.follow(`#${key}`);
    history.pushState(null, "", `#${this.key}`);
  }
}

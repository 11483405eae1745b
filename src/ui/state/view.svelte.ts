/** Which view is open; it stands in the address, so a link and the back button work. */
export class ViewState {
  key = $state("");
  readonly known: readonly string[];
  readonly #first: string;

  /** `first` is the view of an address that names none. */
  constructor(known: readonly string[], first: string) {
    this.known = known;
    this.#first = first;
    this.key = first;
  }

  /** An address' hash names a view. */
  names(hash: string): boolean {
    return this.known.includes(hash.replace(/^#/, ""));
  }

  /** Takes the view from an address' hash. */
  follow(hash: string): void {
    const wanted = hash.replace(/^#/, "");
    this.key = this.known.find((one) => one === wanted) ?? this.#first;
  }

  show(key: string): void {
    if (key === this.key) return;
    this.follow(`#${key}`);
    history.pushState(null, "", `#${this.key}`);
  }
}

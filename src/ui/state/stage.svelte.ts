import type { StageOptions } from "../stage";

/** What the drawing shows. */
export class StageState {
  options = $state.raw<StageOptions>({ forces: false, labels: true, xray: true, follow: true });

  toggle(key: keyof StageOptions): void {
    this.options = { ...this.options, [key]: !this.options[key] };
  }
}

/** What the menu of the bar leads to. */
export interface MenuProps {
  readonly id: string;
  readonly onopen: () => void;
  readonly onnew: () => void;
  readonly onexamples: () => void;
  readonly onbaits: () => void;
  readonly onkeys: () => void;
  readonly onrecipe: () => void;
  readonly onpictures: () => void;
}

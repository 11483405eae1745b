import { tinykeys } from "tinykeys";
import type { ViewKey } from "../words/page";
import type { KeyHelp } from "../words/windows";

/** One key and what it does; the same list is the help. */
export interface KeyAction {
  /** As tinykeys writes it; several by spaces around "|". */
  readonly keys: readonly string[];
  /** As a person reads it. */
  readonly shown: string;
  /** Its text in the window of keys; the key of a view: it opens that view. */
  readonly does: KeyHelp | ViewKey;
  /** Works on a focused button, slider or link too (else those keep the key for themselves). */
  readonly anywhere?: boolean;
  /** Works while text is being typed too: a key that no text field has a use for. */
  readonly typing?: boolean;
  run(): void;
}

/** True where the key belongs to what has the focus: text being typed, or a control that uses keys itself. */
export function belongsToFocus(
  target: EventTarget | null,
  action: Pick<KeyAction, "anywhere" | "typing">,
): boolean {
  if (!(target instanceof Element)) return false;
  if (target.closest("dialog[open], [popover]:popover-open") !== null) return true;
  if (action.typing === true) return false;
  if (target.closest("textarea, select, [contenteditable], input:not([type=range])") !== null) return true;
  if (action.anywhere === true) return false;
  return target.closest("button, a, summary, input, [role=slider], [role=radio], [tabindex='0']") !== null;
}

/** Listens for the keys of the page; returns how to stop. */
export function listenForKeys(target: Window, actions: readonly KeyAction[]): () => void {
  const bindings: Record<string, (event: KeyboardEvent) => void> = {};
  for (const action of actions) {
    for (const key of action.keys) {
      bindings[key] = (event) => {
        if (event.defaultPrevented || belongsToFocus(event.target, action)) return;
        event.preventDefault();
        action.run();
      };
    }
  }
  return tinykeys(target, bindings);
}

import { LANGUAGES } from "../words/base";
import type { Language } from "../words/base";

export type ThemeChoice = "auto" | "light" | "dark";

/** The person's choice; the document and the model know nothing of it. */
export interface UnitChoice {
  readonly length: "mm" | "in";
  readonly mass: "g" | "oz";
  readonly temperature: "°C" | "°F";
}

/** The part of the browser's storage that is used; null where the browser gives none. */
export type Store = Pick<Storage, "getItem" | "setItem"> | null;

const KEY = "trimwright/preferences";
const WIDE = 900;

interface Saved {
  readonly theme: ThemeChoice;
  readonly units: UnitChoice;
  /** Null: nobody has chosen one; the browser's is taken where the page speaks it. */
  readonly language: Language | null;
  readonly dismissed: readonly string[];
  /** The bait that was open when the guided first run began; null: it does not go on. */
  readonly guide: string | null;
}

const DEFAULTS: Saved = {
  theme: "auto",
  units: { length: "mm", mass: "g", temperature: "°C" },
  language: null,
  dismissed: [],
  guide: null,
};

function pick<T extends string>(value: unknown, allowed: readonly T[], otherwise: T): T {
  return allowed.find((one) => one === value) ?? otherwise;
}

/** Reads what an earlier visit left; anything odd in it falls back to the default of that one entry. */
export function readSaved(text: string | null): Saved {
  let raw: Partial<Record<keyof Saved, unknown>>;
  try {
    const parsed: unknown = JSON.parse(text ?? "{}");
    raw = typeof parsed === "object" && parsed !== null ? parsed : {};
  } catch {
    raw = {};
  }
  const units = (typeof raw.units === "object" && raw.units !== null ? raw.units : {}) as Record<
    string,
    unknown
  >;
  return {
    theme: pick(raw.theme, ["auto", "light", "dark"], DEFAULTS.theme),
    units: {
      length: pick(units["length"], ["mm", "in"], DEFAULTS.units.length),
      mass: pick(units["mass"], ["g", "oz"], DEFAULTS.units.mass),
      temperature: pick(units["temperature"], ["°C", "°F"], DEFAULTS.units.temperature),
    },
    language: LANGUAGES.find((one) => one === raw.language) ?? null,
    dismissed: Array.isArray(raw.dismissed) ? raw.dismissed.filter((one) => typeof one === "string") : [],
    guide: typeof raw.guide === "string" ? raw.guide : null,
  };
}

/** What an earlier visit left; null where nothing is there, or where the browser forbids reading it. */
function textOf(store: Store): string | null {
  try {
    return store?.getItem(KEY) ?? null;
  } catch {
    return null;
  }
}

/** What belongs to the person and not to the document: theme, units, cautions put away, folded sections. */
export class Prefs {
  theme = $state<ThemeChoice>("auto");
  /** What the system asks for. */
  systemDark = $state(false);
  units = $state.raw<UnitChoice>(DEFAULTS.units);
  #language = $state.raw<Language | null>(null);
  #guide = $state.raw<string | null>(null);
  #dismissed = $state.raw<readonly string[]>([]);
  /** Sections that a hand has opened or folded. */
  sections = $state.raw<Readonly<Record<string, boolean>>>({});
  readonly #store: Store;
  readonly #wide: boolean;
  readonly #browser: Language;

  /** `width` of the page in px decides whether sections start open; `browser`: the language that the browser asks for. */
  constructor(store: Store, width: number, browser = "en") {
    this.#browser = LANGUAGES.find((one) => browser.startsWith(one)) ?? "en";
    this.#store = store;
    this.#wide = width >= WIDE;
    const saved = readSaved(textOf(store));
    this.theme = saved.theme;
    this.units = saved.units;
    this.#language = saved.language;
    this.#dismissed = saved.dismissed;
    this.#guide = saved.guide;
  }

  /** The paper is dark now, by choice or by the system. */
  get dark(): boolean {
    return this.theme === "auto" ? this.systemDark : this.theme === "dark";
  }

  setTheme(theme: ThemeChoice): void {
    this.theme = theme;
    this.#save();
  }

  setUnits(units: UnitChoice): void {
    this.units = units;
    this.#save();
  }

  /** The language that the page speaks, wherever it knows it. */
  get language(): Language {
    return this.#language ?? this.#browser;
  }

  setLanguage(language: Language): void {
    this.#language = language;
    this.#save();
  }

  isDismissed(key: string): boolean {
    return this.#dismissed.includes(key);
  }

  dismiss(key: string): void {
    if (!this.isDismissed(key)) this.#dismissed = [...this.#dismissed, key];
    this.#save();
  }

  get anyDismissed(): boolean {
    return this.#dismissed.length > 0;
  }

  showCautionsAgain(): void {
    this.#dismissed = [];
    this.#save();
  }

  get guide(): string | null {
    return this.#guide;
  }

  setGuide(guide: string | null): void {
    this.#guide = guide;
    this.#save();
  }

  isOpen(section: string): boolean {
    return this.sections[section] ?? this.#wide;
  }

  setOpen(section: string, open: boolean): void {
    if (this.isOpen(section) !== open) this.sections = { ...this.sections, [section]: open };
  }

  #save(): void {
    const saved: Saved = {
      theme: this.theme,
      units: this.units,
      language: this.#language,
      dismissed: this.#dismissed,
      guide: this.#guide,
    };
    try {
      this.#store?.setItem(KEY, JSON.stringify(saved));
    } catch {
      // A full or forbidden store loses a preference and nothing else.
    }
  }
}

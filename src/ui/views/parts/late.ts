import type { Language } from "../../words/base";

/** The answers to 'why' of these components come with the first question, in the language that is read. */
export const partWhys = (language: Language) => async () => {
  const { whys, ready } = await import("./whys");
  await ready(language);
  return whys;
};

import type { Language } from "../../words/base";

/** The answers to 'why' of this view come with the first question, in the language that is read. */
export const floatWhys = (language: Language) => async () => {
  const { whys, ready } = await import("./whys");
  await ready(language);
  return whys;
};

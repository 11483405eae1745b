import type { Language } from "../../words/base";

/** The answers to 'why' of this view come with the first question, in the language that is read. */
export const floatWhys = (language: Language) => async () => {
  const whys = await import("./whys");
  await whys.ready(language);
  return whys;
};

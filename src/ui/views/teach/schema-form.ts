import { z } from "zod";
import { bare, fieldOf } from "../../../document";
import type { Field } from "../../../document";

/** One place of a form that is made from a schema. */
export type Form =
  | { readonly is: "group"; readonly keys: readonly FormKey[] }
  | { readonly is: "list"; readonly of: z.core.$ZodType; readonly most: number }
  | {
      readonly is: "kinds";
      readonly key: string;
      readonly kinds: readonly {
        readonly kind: string;
        readonly title: string;
        readonly schema: z.core.$ZodType;
      }[];
    }
  | { readonly is: "choice"; readonly options: readonly string[] }
  | { readonly is: "number" }
  | { readonly is: "text"; readonly long: boolean }
  | { readonly is: "json" }
  | { readonly is: "fixed" };

interface FormKey {
  readonly key: string;
  readonly schema: z.core.$ZodType;
  readonly optional: boolean;
}

const LONG_TEXT = 130;

/** What a form shows for a schema. */
export function formOf(given: z.core.$ZodType): Form {
  const schema = bare(given);
  if (schema instanceof z.ZodObject) {
    const shape: Readonly<Record<string, z.core.$ZodType>> = schema.shape;
    return {
      is: "group",
      keys: Object.entries(shape).map(([key, one]) => ({
        key,
        schema: one,
        optional: one instanceof z.ZodExactOptional,
      })),
    };
  }
  if (schema instanceof z.ZodArray) return { is: "list", of: schema.element, most: 60 };
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const key = schema.def.discriminator;
    const kinds = schema.options.flatMap((one) => {
      if (!(one instanceof z.ZodObject)) return [];
      const shape: Readonly<Record<string, z.core.$ZodType>> = one.shape;
      const tag = shape[key];
      const [kind] = tag instanceof z.ZodLiteral ? [...tag.values] : [];
      return kind === undefined ? [] : [{ kind: String(kind), title: labelOf(one), schema: one }];
    });
    return { is: "kinds", key, kinds };
  }
  if (schema instanceof z.ZodEnum) return { is: "choice", options: schema.options.map(String) };
  if (schema instanceof z.ZodNumber) return { is: "number" };
  if (schema instanceof z.ZodString) return { is: "text", long: (schema.maxLength ?? Infinity) > LONG_TEXT };
  if (schema instanceof z.ZodLiteral) return { is: "fixed" };
  return { is: "json" };
}

const about = (schema: z.core.$ZodType): Field | null => fieldOf(bare(schema));
export const labelOf = (schema: z.core.$ZodType): string =>
  about(schema)?.label ?? z.globalRegistry.get(bare(schema))?.title ?? "";
export const helpOf = (schema: z.core.$ZodType): string =>
  about(schema)?.help ?? z.globalRegistry.get(bare(schema))?.description ?? "";

/** What a new entry begins with: the keys that are needed, empty. */
export function emptyOf(given: z.core.$ZodType): unknown {
  const schema = bare(given);
  const form = formOf(schema);
  switch (form.is) {
    case "group":
      return Object.fromEntries(
        form.keys.filter(({ optional }) => !optional).map(({ key, schema: one }) => [key, emptyOf(one)]),
      );
    case "list":
      return [];
    case "kinds":
      return form.kinds[0] === undefined ? {} : emptyOf(form.kinds[0].schema);
    case "choice":
      return form.options[0] ?? "";
    case "number":
      return 1;
    case "text":
      return "";
    case "json":
      return 0;
    case "fixed":
      return schema instanceof z.ZodLiteral ? [...schema.values][0] : null;
  }
}

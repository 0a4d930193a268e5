/**
 * A document as it is written: known fields in the order of the schema, fields equal to their default left out,
 * unknown fields after them as they stood. Driven by the schema itself, so that nothing is listed twice.
 */
import { z } from 'zod';

/** Marks a value that equals its default. */
const LEFT_OUT = Symbol('left out');

/** The document in its written form; `schema` is the one that it satisfies. */
export function withoutDefaults(value: unknown, schema: z.ZodType): unknown {
  const written = compact(value, schema);
  return written === LEFT_OUT ? {} : written;
}

function compact(value: unknown, schema: z.core.$ZodType): unknown {
  if (schema instanceof z.ZodDefault) {
    return isSame(value, schema.def.defaultValue) ? LEFT_OUT : compact(value, schema.def.innerType);
  }
  if (schema instanceof z.ZodPrefault) {
    const written = compact(value, schema.def.innerType);
    return isSame(written, schema.def.defaultValue) ? LEFT_OUT : written;
  }
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodExactOptional) {
    return compact(value, schema.def.innerType);
  }
  if (schema instanceof z.ZodArray && Array.isArray(value)) {
    const { element } = schema.def;
    return value.map((item: unknown) => compact(item, element));
  }
  if (schema instanceof z.ZodUnion) return compactUnion(value, schema);
  if (schema instanceof z.ZodObject && isRecord(value)) return compactRecord(value, schema);
  return value;
}

function compactUnion(value: unknown, schema: z.ZodUnion): unknown {
  const { options } = schema.def;
  const meant =
    schema instanceof z.ZodDiscriminatedUnion ? options.filter((option) => isMeant(option, value)) : options;
  const option = meant.length === 1 ? meant[0] : meant.find((candidate) => z.safeParse(candidate, value).success);
  return option === undefined ? value : compact(value, option);
}

/** Is the option the one that the value's `kind` names? */
function isMeant(option: z.core.$ZodType, value: unknown): boolean {
  if (!(option instanceof z.ZodObject) || !isRecord(value)) return false;
  const kind: unknown = option.shape['kind'];
  return kind instanceof z.ZodLiteral && kind.values.has(value['kind'] as z.core.util.Literal); // any JSON value may be asked for
}

/** A frozen record as it was written, and by which schema. */
interface Kept {
  readonly schema: z.ZodObject;
  readonly written: Record<string, unknown>;
}

/** Parts of a document stay the same object while they do not change, so each is brought to its written form once. */
const kept = new WeakMap<object, Kept>();

function compactRecord(value: Record<string, unknown>, schema: z.ZodObject): Record<string, unknown> {
  const known = kept.get(value);
  if (known?.schema === schema) return known.written;
  const written = Object.freeze(recordWritten(value, schema));
  if (Object.isFrozen(value)) kept.set(value, { schema, written });
  return written;
}

function recordWritten(value: Record<string, unknown>, schema: z.ZodObject): Record<string, unknown> {
  const written: Record<string, unknown> = {};
  for (const [field, inner] of Object.entries<z.core.$ZodType>(schema.def.shape)) {
    if (!Object.hasOwn(value, field)) continue;
    const part = compact(value[field], inner);
    if (part !== LEFT_OUT) written[field] = part;
  }
  for (const field of Object.keys(value)) if (!Object.hasOwn(schema.def.shape, field)) written[field] = value[field];
  return written;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Deep equality of JSON values. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((item: unknown, i) => isSame(item, b[i]));
  }
  if (!isRecord(a) || !isRecord(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && isSame(a[key], b[key]));
}

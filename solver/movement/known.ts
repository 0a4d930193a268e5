/** How the code sees what a schema reads: deeply read-only, and without the fields that it does not know. */

type Leaf = string | number | boolean | null | undefined;

/** The known fields only, deeply read-only: unknown fields are kept in the file but invisible to the code. */
export type Known<T> = T extends Leaf
  ? T
  : T extends readonly [infer A, infer B]
    ? readonly [Known<A>, Known<B>]
    : T extends readonly (infer Item)[]
      ? readonly Known<Item>[]
      : { readonly [K in keyof T as string extends K ? never : K]: Known<T[K]> };

/** Keeps a new value in a field of the coupling that is shown; false where it was refused. */
export type SetField = (field: string, value: unknown) => boolean;

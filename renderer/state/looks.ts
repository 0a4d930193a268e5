/** The two looks. */

export const LOOKS = { paper: 'Paper', layoutBlue: 'Layout blue' } as const;
export type Look = keyof typeof LOOKS;

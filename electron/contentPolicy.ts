/**
 * The content policy of the bench page, in one place: the page's own files and nothing else.
 *
 * It goes out twice: as a header from the shell's own protocol, and as a `meta` element that the build puts
 * into the page, so that the bench in a plain browser is held to the same rules.
 */
const RULES: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'font-src': "'self'",
  'img-src': "'self' blob: data:",
  'worker-src': "'self'",
  'connect-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** The policy as one line, as a header or a `meta` element takes it. */
export const contentPolicy = Object.entries(RULES)
  .map(([rule, sources]) => `${rule} ${sources}`)
  .join('; ');

/** The same with the rule that only a header can carry: no page may frame this one. */
export const contentPolicyHeader = `${contentPolicy}; frame-ancestors 'none'`;

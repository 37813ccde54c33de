// Where in the author's text a thing was said. Opaque to everyone but src/language, which alone turns it into
// file, line and column; rules and generators only carry it. That is how they point at text and yet know no parser.

export interface Origin {
  /** Which text of the estate, as numbered by src/language. */
  readonly source: number;
  /** Offsets in UTF-16 code units, end exclusive. */
  readonly start: number;
  readonly end: number;
}

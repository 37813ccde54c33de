// What a reading says, as a number for a column: the one enumeration from the text of an inspection to the fit of the wear model.

export const ReadingKind = {
  /** A thickness in mm. */
  thickness: 0,
  /** Layer number showing, 0 the first layer on the screw side. */
  colour: 1,
  /** Steel shows: the liner is worn through. */
  trough: 2,
  /** Looked for and not seen; says nothing about wear. */
  notSeen: 3,
  /** A colour name the liner does not have, or an unreadable value: reported, and taken no further. */
  unreadable: 4,
  /** Said later not to count (a correction): no reading of the liner. */
  withdrawn: 5,
} as const;

export type ReadingKind = (typeof ReadingKind)[keyof typeof ReadingKind];

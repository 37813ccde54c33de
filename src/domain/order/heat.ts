// Which steps weld, cut with a flame or throw sparks, and how long their place is watched afterwards.
// Polyethylene burns and drips burning, so it matters where liner lies (demands.ts).

/** Hours after hot work; judgement: site permits ask for half an hour to an hour, and burning drips run far. */
export const usualFireWatch = 1;

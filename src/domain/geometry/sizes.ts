// Standard screw sizes, as a default that can be seen: IS 5563:1985, nominal screw diameter and height of the trough's
// top edge above the screw centre. A conveyor of another size is not wrong; the table says what is usual.

/** mm; in the order of the standard. */
export const screwSizes: readonly { readonly diameter: number; readonly centreToTop: number }[] = [
  { diameter: 100, centreToTop: 63 },
  { diameter: 125, centreToTop: 75 },
  { diameter: 160, centreToTop: 90 },
  { diameter: 200, centreToTop: 112 },
  { diameter: 250, centreToTop: 140 },
  { diameter: 315, centreToTop: 180 },
  { diameter: 400, centreToTop: 224 },
  { diameter: 500, centreToTop: 280 },
  { diameter: 630, centreToTop: 355 },
  { diameter: 800, centreToTop: 450 },
  { diameter: 1000, centreToTop: 560 },
  { diameter: 1250, centreToTop: 710 },
];

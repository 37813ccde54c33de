// What do colours alone say about a rate? A layer that shows at an exposure puts the wear between two layer depths, so every
// look bounds the rate from below, from above, or both; together the looks give an interval. No tolerance is taken here: the
// bounds are those of the nominal layer depths, worked out by hand as depth over exposure.

/** Exposure since fitting (h or t) and the layer seen: 0 the first on the screw side, `layers.length` for the trough. */
export interface LayerSeen {
  readonly exposure: number;
  readonly layer: number;
}

export interface ColourInput {
  /** Layer thicknesses from the screw side, mm. */
  readonly layers: readonly number[];
  /** Least thickness allowed, mm. */
  readonly least: number;
  readonly seen: readonly LayerSeen[];
}

/**
 * Rates in mm per unit of exposure; lives in units of exposure from the last look.
 * `at most`: the first layer was all that ever showed, so the records bound the rate from above only and no last date follows.
 * `contradiction`: no constant rate fits the looks (a layer showed, and later one nearer the screw, or the like).
 */
export type ColourResult =
  | { readonly kind: 'nothing seen' }
  | {
      readonly kind: 'at most';
      readonly last: LayerSeen;
      readonly highRate: number;
      readonly leastThickness: number;
      readonly leastLife: number;
    }
  | {
      readonly kind: 'between';
      readonly last: LayerSeen;
      readonly lowRate: number;
      readonly highRate: number;
      readonly leastThickness: number;
      readonly mostThickness: number;
      readonly leastLife: number;
      readonly mostLife: number;
    }
  | { readonly kind: 'worn through'; readonly last: LayerSeen; readonly lowRate: number }
  | { readonly kind: 'contradiction'; readonly reached: LayerSeen; readonly notReached: LayerSeen };

export function colourBounds(input: ColourInput): ColourResult {
  const depths = layerDepths(input.layers);
  const full = depths.at(-1) ?? 0;
  const seen = input.seen.filter(
    (s) => Number.isFinite(s.exposure) && s.exposure > 0 && s.layer >= 0 && s.layer <= input.layers.length,
  );
  const last = seen.reduce<LayerSeen | undefined>(
    (a, b) => (a === undefined || b.exposure >= a.exposure ? b : a),
    undefined,
  );
  if (!last || !(full > 0)) return { kind: 'nothing seen' };

  // Layer k showing: depth of k layers is reached, depth of k + 1 layers is not (except at the trough, which has no next).
  let low: { rate: number; by: LayerSeen } | undefined;
  let high: { rate: number; by: LayerSeen } | undefined;
  for (const look of seen) {
    const reached = (depths[look.layer] ?? 0) / look.exposure;
    if (look.layer > 0 && (low === undefined || reached > low.rate)) low = { rate: reached, by: look };
    const next = depths[look.layer + 1];
    if (next !== undefined && (high === undefined || next / look.exposure < high.rate))
      high = { rate: next / look.exposure, by: look };
  }
  if (low && high && low.rate > high.rate)
    return { kind: 'contradiction', reached: low.by, notReached: high.by };
  if (last.layer === input.layers.length)
    return { kind: 'worn through', last, lowRate: low?.rate ?? full / last.exposure };
  if (!high) return { kind: 'nothing seen' };

  const thickness = (rate: number): number => Math.max(0, full - rate * last.exposure);
  const life = (rate: number): number => Math.max(0, (full - input.least) / rate - last.exposure);
  const leastThickness = thickness(high.rate);
  const leastLife = life(high.rate);
  if (!low) return { kind: 'at most', last, highRate: high.rate, leastThickness, leastLife };
  return {
    kind: 'between',
    last,
    lowRate: low.rate,
    highRate: high.rate,
    leastThickness,
    mostThickness: thickness(low.rate),
    leastLife,
    mostLife: life(low.rate),
  };
}

/**
 * mm that may be left while a layer shows (not the trough). Where a liner came thinner or thicker than bought nobody knows which of its
 * layers did: it may lie as bought, or be off by all of it.
 */
export function leftWhile(
  layer: number,
  fitted: number,
  depths: readonly number[],
): { readonly least: number; readonly most: number } {
  const bought = depths.at(-1) ?? 0;
  return {
    least: Math.max(0, Math.min(fitted, bought) - (depths[layer + 1] ?? bought)),
    most: Math.max(fitted, bought) - (depths[layer] ?? 0),
  };
}

/** Depths at which each layer ends, mm, beginning with 0 at the screw side: [6, 6] → [0, 6, 12]. */
export function layerDepths(layers: readonly number[]): readonly number[] {
  const depths = [0];
  for (const layer of layers) depths.push((depths.at(-1) ?? 0) + layer);
  return depths;
}

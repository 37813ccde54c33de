// What should the gauge show today? From the last readings by plain arithmetic, wide enough that a reading outside it deserves
// a second look: the slower and the faster of the long- and short-term rates for thicknesses, the layer depths for colours; a
// colour seen after the last thickness caps what is expected (wear/known.ts).

import type { Expectation } from '../sheet.js';
import { colourBounds, layerDepths } from '../../../domain/wear/colour-bounds.js';
import { knownByHand } from '../../../domain/wear/known.js';

export interface EarlierReading {
  readonly exposure: number;
  /** Remaining mm, or the number of the layer showing (the number of layers for the trough). */
  readonly thickness?: number;
  readonly layer?: number;
}

export interface ExpectationInput {
  /** mm when fitted. */
  readonly fitted: number;
  readonly condemn: number;
  /** From the screw side. */
  readonly layers: readonly { readonly name: string; readonly thickness: number }[];
  /** Of the liner that lies there now, oldest first. */
  readonly seen: readonly EarlierReading[];
  /** Exposure of that liner on the sheet's date; undefined where it is not known. */
  readonly now: number | undefined;
  /** One standard deviation of a reading, mm. */
  readonly error: number;
  readonly unit: 'h' | 't';
}

/** A single reading tells no spread: half as fast to one and a half times as fast is allowed for (judgement). */
const singleSpread = 0.5;

export function expectationFor(input: ExpectationInput): Expectation {
  const { fitted, seen, now } = input;
  const band = 2 * input.error;
  if (now === undefined)
    return { kind: 'open', most: fitted + band, reason: 'how long this liner has been in is not known' };
  const last = seen.at(-1);
  if (!last)
    return {
      kind: 'open',
      most: fitted + band,
      reason: now > 0 ? `no reading of this liner yet, ${Math.round(now)} ${input.unit} on it` : 'new liner',
    };
  if (seen.every(({ thickness }) => thickness === undefined)) return fromColours(input, now, band);

  const depths = layerDepths(input.layers.map((layer) => layer.thickness));
  const { result: hand, overruled } = knownByHand({ fitted, least: input.condemn, depths, seen });
  if (overruled?.by === 'steel')
    return { kind: 'worn through', reason: 'the trough showed after the last thickness' };
  if (hand.kind === 'no reading')
    return { kind: 'open', most: fitted + band, reason: 'the only reading was made when the liner was new' };
  const more = Math.max(0, now - hand.last.exposure);
  const short = hand.shortTerm.kind === 'rate' ? hand.shortTerm.rate : undefined;
  const long = Math.max(0, hand.longTerm);
  const [slow, fast] =
    short === undefined
      ? [long * singleSpread, long * (1 + singleSpread)]
      : [Math.min(long, short), Math.max(long, short)];
  const basis =
    short === undefined
      ? `one reading ${span(more, input.unit)} ago: wide`
      : `long- and short-term rate over ${span(more, input.unit)}`;
  const most = last.layer === undefined ? Infinity : fitted - (depths[last.layer] ?? 0);
  const least = hand.last.thickness - fast * more - band;
  return range(
    input,
    overruled ? Math.min(least, most - fast * more - band) : least,
    Math.min(hand.last.thickness - slow * more, most) + band,
    overruled ? `a colour seen since caps it; ${basis}` : basis,
  );
}

function fromColours(input: ExpectationInput, now: number, band: number): Expectation {
  const seen = input.seen.flatMap((row) =>
    row.layer !== undefined
      ? [{ exposure: row.exposure, layer: row.layer }]
      : row.thickness !== undefined
        ? [{ exposure: row.exposure, layer: layerAt(input, row.thickness) }]
        : [],
  );
  const bounds = colourBounds({
    layers: input.layers.map((layer) => layer.thickness),
    least: input.condemn,
    seen,
  });
  switch (bounds.kind) {
    case 'worn through':
      return { kind: 'worn through', reason: 'the trough showed last time' };
    case 'contradiction':
      return {
        kind: 'open',
        most: input.fitted + band,
        reason: 'the colours seen so far contradict each other: look twice',
      };
    case 'nothing seen':
      return { kind: 'open', most: input.fitted + band, reason: 'no colour seen yet' };
    case 'at most':
      return range(
        input,
        input.fitted - bounds.highRate * now,
        input.fitted + band,
        'first colour last time: only an upper limit on the rate',
      );
    case 'between':
      return range(
        input,
        input.fitted - bounds.highRate * now,
        Math.min(bounds.mostThickness, input.fitted - bounds.lowRate * now) + band,
        'from the colours seen',
      );
  }
}

function range(input: ExpectationInput, low: number, high: number, basis: string): Expectation {
  const most = Math.min(Math.max(high, 0), input.fitted + 2 * input.error);
  const least = Math.min(Math.max(low, 0), most);
  if (least <= 0 && most >= input.fitted) return { kind: 'open', most, reason: basis };
  return {
    kind: 'range',
    least,
    most,
    layers: layersWithin(input, least, most),
    basis,
    mayBeAtLimit: least <= input.condemn,
  };
}

/** Names of the layers that can show when between `least` and `most` mm are left. */
function layersWithin(input: ExpectationInput, least: number, most: number): readonly string[] {
  const first = layerAt(input, most);
  const last = layerAt(input, least);
  const names = input.layers.slice(first, last + 1).map((layer) => layer.name);
  return least <= 0 ? [...names, 'trough'] : names;
}

/** Number of the layer showing at a remaining thickness; the last one down to nothing. */
function layerAt(input: ExpectationInput, left: number): number {
  let depth = 0;
  const worn = input.fitted - left;
  for (const [index, layer] of input.layers.entries()) {
    depth += layer.thickness;
    if (worn < depth - 1e-9) return index;
  }
  return Math.max(0, input.layers.length - 1);
}

function span(exposure: number, unit: 'h' | 't'): string {
  return `${Math.round(exposure)} ${unit}`;
}

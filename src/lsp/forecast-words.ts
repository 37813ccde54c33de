// What the wear model says of an estate, in words: kept with the session until the model has spoken again.

export interface Forecasts {
  readonly revision: number;
  /** By `uri start` of the conveyor's name. */
  readonly conveyors: Readonly<Record<string, ConveyorWords>>;
}

export interface ConveyorWords {
  /** A few words for a lens. */
  readonly short: string;
  /** What to do, as on the first page of the report. */
  readonly todo: string;
  /** Sentences for a hover. */
  readonly long: readonly string[];
  /** About the day (counted) on which the condemn limit is reached; 0 where it is, left out where nothing is known. */
  readonly urgency?: number;
  /** By name of the point. */
  readonly points: Readonly<Record<string, { readonly short: string; readonly long: readonly string[] }>>;
}

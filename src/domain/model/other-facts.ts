// What an inspection may hold besides its readings, and what work may have shown, with nothing in it yet.

import type { Inspection, SeenBeside } from './records.js';

export type Mutable<T> = { -readonly [K in keyof T]: T[K] extends readonly (infer E)[] ? E[] : T[K] };

export type OtherFacts = Mutable<
  Pick<
    Inspection,
    | 'holdDownGaps'
    | 'flights'
    | 'flightDiameters'
    | 'wornWidths'
    | 'currents'
    | 'speeds'
    | 'remarks'
    | 'photos'
    | 'conditions'
    | 'asked'
    | 'notLooked'
    | 'plates'
  >
>;

export function nothingSeen(): Mutable<SeenBeside> {
  return { remarks: [], photos: [], conditions: [], asked: [] };
}

export function noOtherFacts(): OtherFacts {
  return {
    holdDownGaps: [],
    flights: [],
    flightDiameters: [],
    wornWidths: [],
    currents: [],
    speeds: [],
    ...nothingSeen(),
    notLooked: [],
    plates: [],
  };
}

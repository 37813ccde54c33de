// What an inspection may hold besides its readings, with nothing in it yet.

import type { Inspection } from './records.js';

type Mutable<T> = { -readonly [K in keyof T]: T[K] extends readonly (infer E)[] ? E[] : T[K] };

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
    | 'notLooked'
    | 'plates'
  >
>;

export function noOtherFacts(): OtherFacts {
  return {
    holdDownGaps: [],
    flights: [],
    flightDiameters: [],
    wornWidths: [],
    currents: [],
    speeds: [],
    remarks: [],
    photos: [],
    conditions: [],
    notLooked: [],
    plates: [],
  };
}

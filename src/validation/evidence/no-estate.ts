// An estate with nothing in it: what rules see when only problems of the text are to be reported.

import type { Estate } from '../../domain/model/estate.js';

export const noEstate: Estate = {
  plants: [],
  liners: [],
  screws: [],
  conveyors: [],
  inspections: [],
  corrections: [],
  amendments: [],
  places: [],
  relines: [],
  panelsMoved: [],
  screwChanges: [],
  meterChanges: [],
  patches: [],
  services: [],
  dutyChanges: [],
  driveChanges: [],
  jobs: [],
  readings: {
    count: 0,
    inspection: new Int32Array(0),
    place: new Int32Array(0),
    kind: new Uint8Array(0),
    value: new Float64Array(0),
    error: new Float64Array(0),
    source: new Int32Array(0),
    start: new Int32Array(0),
    end: new Int32Array(0),
    notes: new Map(),
    photos: new Map(),
    corrected: new Map(),
    bench: new Map(),
  },
};

// What a shaftless spiral takes to turn empty, lying on its liner: from its own mass, where flight and speed are declared.

import { dragPower } from '../geometry/drive.js';
import { flightMassPerMetre } from '../geometry/helix.js';
import type { Conveyor } from './conveyor.js';

/** kW; undefined for a screw on a shaft, or where flight or speed are not declared or make no sense. */
export function emptyDrag({ screw, drive, length, incline }: Conveyor): number | undefined {
  const { flight, innerFlight } = screw;
  const speed = drive?.speed;
  if (screw.kind.kind !== 'shaftless' || !flight || !speed) return undefined;
  const outside = screw.outsideDiameter.value;
  const density = screw.density.value;
  try {
    const outer = flightMassPerMetre(
      { outside, inside: outside - 2 * flight.width.value, pitch: screw.pitch.value },
      flight.thickness.value,
      density,
    );
    const inner = innerFlight
      ? flightMassPerMetre(
          {
            outside: innerFlight.outside.value,
            inside: innerFlight.inside.value,
            pitch: innerFlight.pitch.value,
          },
          innerFlight.thickness.value,
          density,
        )
      : 0;
    const mass = ((outer + inner) * length.value) / 1000;
    return dragPower({ mass, incline: incline.value, diameter: outside, speed: speed.value });
  } catch (fault) {
    if (fault instanceof RangeError) return undefined; // such a screw has its own findings
    throw fault;
  }
}

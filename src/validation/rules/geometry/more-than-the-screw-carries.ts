// Can the screw carry the declared capacity? 47.124·(D² − d²)·S·n·φ (ISO 7119, DIN 15262), with the mildest of the published
// losses for the incline, and quite full where no fill is declared: what exceeds this cannot be.

import { conveyorsAsDriven } from '../../../domain/model/present-drive.js';
import { inclineBand, massFlow } from '../../../domain/geometry/capacity.js';
import { formatValue } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';

export const moreThanTheScrewCarries: Rule = {
  code: 'TL223',
  title: 'Capacity beyond what the screw can carry',
  severity: 'warning',
  restsOn: [],
  why: 'Wear by tonnes, power and planning all rest on the capacity; a screw that cannot carry it backs up at the inlet.',
  todo: 'Check capacity, speed, fill and bulk density, and their units.',
  given: 'conveyor',
  example: `
  bulk density 900 kg/m3
  fill 40 %
  capacity «40 t/h|10 t/h»`,
  check: each(conveyorsAsDriven, function* (conveyor) {
    const { capacity, bulkDensity, drive, fill, screw, incline } = conveyor;
    const speed = drive?.speed;
    if (!capacity || !bulkDensity || !speed) return;
    const outside = screw.outsideDiameter.value;
    const core = screw.kind.kind === 'shafted' ? screw.kind.shaft.value : 0;
    const share = fill?.value ?? 1;
    if (
      !isPlausible('outside diameter', outside) ||
      !isPlausible('screw pitch', screw.pitch.value) ||
      core >= outside ||
      share > 1 ||
      bulkDensity.value <= 0
    )
      return;
    // All that is carried passes the shortest pitch.
    const least = Math.min(screw.pitch.value, ...(screw.pitches ?? []).map(({ pitch }) => pitch.value));
    const left = inclineBand(Math.min(30, Math.max(0, incline.value)))?.to ?? 1;
    const most = massFlow(
      { outside, core, pitch: least, speed: speed.value, fill: share, inclineFactor: left },
      bulkDensity.value,
    );
    if (capacity.value <= most) return;
    yield {
      origin: capacity.origin,
      message:
        `${conveyor.name} is to carry ${capacity.text}, and ${screw.name} at ${speed.text} carries at most ${formatValue(most, 'mass flow', { digits: 1 })}` +
        `${least < screw.pitch.value ? ' through its shortest pitch' : ''}` +
        `${fill ? ` when ${fill.text} full` : ' even when quite full'}.`,
      related: [
        { origin: speed.origin, message: 'the speed' },
        { origin: bulkDensity.origin, message: 'the bulk density' },
      ],
    };
  }),
};

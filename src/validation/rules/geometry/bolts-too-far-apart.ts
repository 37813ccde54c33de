// Would the liner lift between its bolts when warm? Clamped flat strip, l = πt/√(3·Δα·ΔT) (geometry/thermal.ts), against
// the trough's steel; on the safe side on the curved bottom, so this is told as a note.

import { linerSide } from '../../../domain/model/liner-side.js';
import { bucklingPitch, heldAcross, restrainedStress } from '../../../domain/geometry/thermal.js';
import { troughSteel } from '../../../domain/model/trough-steel.js';
import { developedWidth } from '../../../domain/geometry/trough.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatNumber } from '../../../domain/units/format.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';
import { warmingOf } from '../../evidence/temperatures.js';

export const boltsTooFarApart: Rule = {
  code: 'TL219',
  title: 'Bolts further apart than a warm liner bears',
  severity: 'information',
  restsOn: ['machine'],
  tags: ['advice'],
  why: 'A panel that is butted tight and bolted cold buckles when it warms: it lifts into the screw and is torn.',
  todo: 'Space the bolts closer, fit on a warmer day, or leave a joint gap; the curve of the trough helps, the flat sides get no such help.',
  given: 'liner',
  example: '  bolt M10 rows 2 pitch «400 mm|250 mm» countersink 4 mm',
  *check({ estate }) {
    const told = new Set<object>();
    for (const conveyor of estate.conveyors) {
      const { liner } = conveyor;
      const pitch = liner.bolt?.pitch;
      const warming = warmingOf(conveyor);
      if (
        !pitch ||
        !warming ||
        told.has(liner) ||
        liner.joint.policy === 'gap' ||
        !isPlausible('liner thickness', liner.thickness.value)
      )
        continue;
      const grows = liner.expansion.value - troughSteel(conveyor.trough.material).expansion;
      const limit = bucklingPitch(liner.thickness.value, grows, warming.rise);
      if (limit === undefined || pitch.value <= limit) continue;
      told.add(liner);
      const stress = restrainedStress(liner.modulus.value, grows, warming.rise);
      const across = stress * liner.thickness.value * sheetWidth(conveyor);
      yield {
        origin: pitch.origin,
        message:
          `The bolts of ${liner.name} are ${pitch.text} apart; fitted at ${warming.coldestFitting.text} ` +
          `and running at ${warming.warmestService.text} on ${conveyor.name}, ` +
          `a flat strip that is free at its sides lifts where they are more than ${lengthOn(conveyor, Math.floor(limit))} ` +
          `apart, one held across its width where they are more than ${lengthOn(conveyor, Math.floor(limit * heldAcross()))}. ` +
          `Held, it presses with up to ${formatNumber(stress, 1)} MPa: ` +
          `${formatNumber(across / 1000, 0)} kN over the width of the sheet, until it has crept.`,
        related: [{ origin: conveyor.linerUse.origin, message: `used on ${conveyor.name}` }],
      };
    }
  },
};

function sheetWidth(conveyor: Conveyor): number {
  const { trough, liner } = conveyor;
  return developedWidth({
    insideRadius: trough.insideRadius.value,
    sideHeight: linerSide(conveyor).value,
    thickness: liner.thickness.value,
  });
}

// At the first thickness read on a liner: would what it surely lost by then (three errors of the reading less, and no more than the
// delivered tolerance) use it up to its condemn limit within a time that no liner of this trade is bought for?

import { exposureBetween } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import { toleranceOf } from '../../../domain/model/impossible-reading.js';
import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { isPlausible } from '../../evidence/plausible.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import { eachCounted } from '../../evidence/seen-sets.js';
import { toldTogether, type OfALiner } from '../../telling/told-together.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '2000 h',
  dimension: 'duration',
  what: 'Running hours from new to the condemn limit below which a first reading is not believed as it stands.',
  basis: 'judgement: a quarter of a year of two shifts; half of the expected life counts where that is less',
};

const look = (value: string, when = '2024-02-12 meter 490 h'): string => `
inspection DG1 ${when} {
  view downstream
  gauge ultrasonic ± 0.2 mm
  ${value}
}`;

export const newLinerWornFast: Rule = {
  code: 'TL376',
  title: 'New liner that lost too much by its first reading',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'Either a wrong spot, a wrong day of fitting or a thinner panel stands behind it, or something grinds there: a bent ' +
    'spiral, a stone, no clearance. Every forecast of the spot follows this one number.',
  todo:
    'Read the spot again now and look at the spiral above it; check the day and the liner of the reline. Where liners ' +
    'wear like that, the plant sets the threshold.',
  threshold,
  given: 'estate',
  // Without them the wear would call for a liner at once, which is told too.
  around: { plant: 'outage Feb24 2024-02-26 to 2024-03-01\nlead time liner 1 week' },
  example: look('«P1 thickness 8.8 mm|P1 thickness 11.6 mm»'),
  cases: [
    { name: 'as much, in a year', text: look('P1 thickness 8.0 mm', '2024-09-09 meter 3600 h') },
    { name: 'no more than a thin sheet and the gauge allow', text: look('P1 thickness 11.0 mm') },
  ],
  check({ estate }) {
    const { readings, places } = estate;
    const found: OfALiner[] = [];
    const before = new Map<number, LinerSet>();
    eachCounted(estate, (row, index, set, inspection) => {
      const place = places[index];
      if (!place || before.get(index) === set) return;
      before.set(index, set);
      if (readings.kind[row] !== ReadingKind.thickness) return;
      const { conveyor } = place;
      const exposure = exposureBetween(
        historyOf(estate, conveyor),
        set,
        momentOf(historyOf(estate, conveyor), inspection),
      );
      if (!exposure.known || exposure.unit !== 'h' || exposure.value <= 0) return;
      const asFitted = fittedThickness(set, place);
      const { value: fitted } = asFitted;
      const value = readings.value[row] ?? 0;
      if (!isPlausible('liner thickness', fitted) || !isPlausible('reading thickness', value)) return;
      const surely = fitted - toleranceOf(set, asFitted) - value - 3 * errorOf(estate, row);
      const life = ((fitted - set.liner.condemn.value) / surely) * exposure.value;
      const expected = set.liner.expectedLife?.nominal.value ?? Infinity;
      if (!(surely > 0) || life >= Math.min(settled(conveyor.plant, 'TL376', threshold), expected / 2))
        return;
      found.push({
        alike: set.liner.name,
        conveyor,
        at: place.at,
        origin: originOf(readings, row),
        message:
          `${place.name} of ${conveyor.name} lost ${lengthOn(conveyor, Math.round((fitted - value) * 10) / 10)} in the first ` +
          `${Math.round(exposure.value)} h of ${set.liner.name}; at that rate it is at its condemn limit ` +
          `${Math.round(((fitted - set.liner.condemn.value) / (fitted - value)) * exposure.value)} h from new.`,
      });
    });
    return toldTogether(found);
  },
};

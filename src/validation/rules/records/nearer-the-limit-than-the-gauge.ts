// Can this gauge tell whether the limit is reached?

import { originOf } from '../../../domain/model/records.js';
import { latestRows } from '../../evidence/latest-rows.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '2',
  dimension: 'ratio',
  what: 'How many errors of the gauge a reading has to be away from the limit.',
  basis: 'judgement: about one reading in forty is off by more on the side that matters',
};

export const nearerTheLimitThanTheGauge: Rule = {
  code: 'TL360',
  title: 'Nearer to the limit than the gauge can tell',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'Within two errors of the limit the reading may as well be below it: a liner is left in because a number happens to be a little too large.',
  todo: 'Measure again with a better gauge, calibrated on an offcut; until then treat the limit as reached.',
  threshold,
  given: 'inspection',
  around: { plant: '- outage\n- lead' },
  example: '  P1 thickness «3.3 mm ± 0.2 mm|3.5 mm ± 0.2 mm»'.replace(
    'P1 thickness «3.3 mm ± 0.2 mm|3.5 mm ± 0.2 mm»',
    '«P1 thickness 3.3 mm ± 0.2 mm|P1 thickness 3.5 mm ± 0.2 mm»',
  ),
  cases: [{ name: 'two errors away', text: '  P1 thickness 3.4 mm ± 0.2 mm' }],
  *check({ estate }) {
    for (const { row, place, set } of latestRows(estate)) {
      if (estate.readings.kind[row] !== ReadingKind.thickness) continue;
      const left = estate.readings.value[row] ?? NaN;
      const error = errorOf(estate, row);
      const above = left - set.liner.condemn.value;
      if (!(above > 0) || above >= settled(place.conveyor.plant, 'TL360', threshold) * error - 1e-9) continue;
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${lengthOn(place.conveyor, left)} at ${place.name} is ${lengthOn(place.conveyor, above)} above the condemn limit of ` +
          `${set.liner.condemn.text}, and this reading is good to ± ${lengthOn(place.conveyor, error)}.`,
      };
    }
  },
};

// Does the drive suddenly draw far less than it used to? Then it turns something that is no longer all there.

import { looksOfThisMotor } from '../../evidence/looks-of-this-motor.js';
import type { Stated } from '../../../domain/model/stated.js';
import { formatValue } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { againstUsual } from '../../telling/against-usual.js';

const before = `
inspection DG1 2024-09-09 meter 3600 h {
  current loaded 15 A
}
inspection DG1 2025-03-10 meter 6200 h {
  current loaded 14 A
}`;

const threshold: RuleThreshold = {
  usual: '40 %',
  dimension: 'ratio',
  what: 'Share of the current before (median) below which the drive turns something that is no longer all there.',
  basis: 'judgement: a trough that runs empty draws more than half of a loaded one’s current',
};

export const currentFarBelow: Rule = {
  code: 'TL357',
  title: 'Motor current far below usual',
  severity: 'warning',
  restsOn: ['history'],
  why: 'A spiral that has broken, or come off its drive plate, turns alone: the motor runs light while the trough behind it fills up and blocks.',
  todo: 'Look whether the far end of the spiral turns, isolate, and look at drive plate, bolts and welds; or correct the reading.',
  threshold,
  given: 'estate',
  example: `${before}
inspection DG1 2025-09-08 meter 9000 h {
  current loaded «2 A|13 A»
}`,
  cases: [
    {
      name: 'two fifths exactly',
      text: `${before}\ninspection DG1 2025-09-08 meter 9000 h {\n  current loaded 5.8 A\n}`,
    },
    {
      name: 'just less',
      text: `${before}\ninspection DG1 2025-09-08 meter 9000 h {\n  current loaded «5.7 A»\n}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const looks = looksOfThisMotor(estate, conveyor);
      for (const state of ['empty', 'loaded'] as const) {
        const readings = looks.flatMap(({ currents }) =>
          currents.map((each) => each[state]).filter((one): one is Stated<'current'> => one !== undefined),
        );
        const found = againstUsual(readings);
        if (!found) continue;
        const { newest, usual, count } = found;
        if (newest.value >= settled(conveyor.plant, 'TL357', threshold) * usual - 1e-9) continue;
        yield {
          origin: newest.origin,
          message:
            `The drive of ${conveyor.name} draws ${newest.text} ${state}, and drew ${formatValue(usual, 'current')} before ` +
            `(median of ${count}).`,
        };
      }
    }
  },
};

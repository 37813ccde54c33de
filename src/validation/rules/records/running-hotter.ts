// Does a bearing or the gearbox run hotter than it used to?

import { recordsOf } from '../../../domain/model/dated-records.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { againstUsual } from '../../telling/against-usual.js';

const before = `
inspection DG1 2024-09-09 meter 3600 h {
  gearbox temperature 52 degC
}
inspection DG1 2025-03-10 meter 6200 h {
  gearbox temperature 54 degC
}`;

const threshold: RuleThreshold = {
  usual: '15 K',
  dimension: 'temperature',
  difference: true,
  what: 'Rise above the median before.',
  basis: 'judgement: a summer’s day makes 10 to 12 K',
};

export const runningHotter: Rule = {
  code: 'TL361',
  title: 'Bearing or gearbox runs hotter',
  severity: 'warning',
  restsOn: ['history'],
  why: 'Heat comes weeks before noise, and noise shortly before the stop: a dry or overloaded bearing that is changed now saves shaft and seal.',
  todo: 'Check oil, grease and load, measure again at the same load and weather, and write a severity once it stands out.',
  threshold,
  given: 'estate',
  example: `${before}
inspection DG1 2025-09-08 meter 9000 h {
  gearbox temperature «78 degC|64 degC»
}`,
  cases: [
    {
      name: 'fifteen kelvin exactly',
      text: `${before}\ninspection DG1 2025-09-08 meter 9000 h {\n  gearbox temperature 68 degC\n}`,
    },
    {
      name: 'of a second drive, at the other end',
      text: `${before}\ninspection DG1 2025-09-08 meter 9000 h {\n  gearbox temperature 78 degC at tail\n}`,
    },
    {
      name: 'another bearing',
      text: `${before}\ninspection DG1 2025-09-08 meter 9000 h {\n  tail bearing temperature 78 degC\n}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const lines = recordsOf(historyOf(estate, conveyor)).flatMap(({ conditions }) =>
        conditions.filter(({ temperature, answer }) => temperature && answer === undefined),
      );
      for (const [kind, otherDrive] of bearings) {
        const own = lines.flatMap((line) =>
          line.kind === kind && line.otherDrive === otherDrive && line.temperature ? [line.temperature] : [],
        );
        const found = againstUsual(own);
        if (!found) continue;
        const { newest, usual, count } = found;
        if (newest.value <= usual + settled(conveyor.plant, 'TL361', threshold) + 1e-9) continue;
        yield {
          origin: newest.origin,
          message:
            `The ${otherDrive === undefined ? kind : `${kind} at ${otherDrive}`} of ${conveyor.name} runs at ${newest.text}, ` +
            `${formatNumber(newest.value - usual, 0)} K above what it had before (median of ${count}).`,
        };
      }
    }
  },
};

/** Where a machine is driven at both ends, each by itself. */
const bearings = [
  ['tail bearing', undefined],
  ...(['thrust bearing', 'gearbox'] as const).flatMap((kind) =>
    ([undefined, 'head', 'tail'] as const).map((otherDrive) => [kind, otherDrive] as const),
  ),
] as const;

// Can so much steel be there? A plate reading above the trough's own plate, or a patch thicker than it.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { runsOf } from '../../../domain/model/runs.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '15 %',
  dimension: 'ratio',
  what: 'By how much a plate may read above its nominal thickness.',
  basis: 'judgement: mill tolerance and gauge together',
};

export const plateThickerThanTheTrough: Rule = {
  code: 'TL355',
  title: 'Plate thicker than the trough',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A plate that reads thicker than it was bought was measured through paint, ' +
    'rust or the wrong sound velocity, and hides how thin it is; ' +
    'a patch thicker than the trough stands up into the liner or the screw.',
  todo: 'Clean the spot, set the gauge to steel and read again; for a patch, write its real thickness, or take a plate no thicker than the trough.',
  threshold,
  given: 'inspection',
  example: '  plate at 4.2 m thickness «4.7 mm|4.5 mm»',
  cases: [
    { name: 'at the top of the band', text: '  plate at 4.2 m thickness 4.6 mm' },
    {
      name: 'a patch thicker than the trough, under a liner',
      text: '  P1 colour ivory\n}\npatch DG1 2024-12-02 at 4 m to 4.5 m thickness «6 mm»\ninspection DG1 2024-12-03 {\n  view downstream',
    },
    {
      name: 'the same in an inlet, where no liner lies',
      text: '  P1 colour ivory\n}\npatch DG1 2024-12-02 at 0.4 m to 1.2 m thickness 6 mm\ninspection DG1 2024-12-03 {\n  view downstream',
    },
    {
      name: 'through a patch that was welded onto what was left of the plate',
      text: '  plate at 4.2 m thickness 5.7 mm\n}\npatch DG1 2024-12-02 at 4 m to 4.5 m thickness 3 mm\ninspection DG1 2024-12-03 {\n  view downstream',
    },
  ],
  *check({ estate }) {
    for (const { conveyor, plates, date } of [...estate.inspections, ...estate.relines]) {
      for (const { at, thickness } of plates) {
        const patch = estate.patches.findLast(
          (each) =>
            each.conveyor === conveyor &&
            each.date.day <= date.day &&
            at.value >= each.from.value &&
            at.value <= each.to.value,
        );
        const asNew = patch?.thickness ?? conveyor.trough.plate;
        // A patch may be welded onto what is left of the trough: then both are read.
        const most = patch ? patch.thickness.value + conveyor.trough.plate.value : asNew.value;
        if (thickness.value <= most * (1 + settled(conveyor.plant, 'TL355', threshold))) continue;
        yield {
          origin: thickness.origin,
          message: patch
            ? `${thickness.text} is read, and the patch was ${asNew.text} thick when new, on a plate of ${conveyor.trough.plate.text}.`
            : `${thickness.text} is read, and the trough of ${conveyor.name} was ${asNew.text} thick when new.`,
        };
      }
    }
    for (const { conveyor, thickness, from, to } of estate.patches) {
      const { plate } = conveyor.trough;
      // Where no liner lies, as in a drain, a thicker plate stands in nothing's way.
      if (!runsOf(conveyor).some((run) => from.value < run.to && to.value > run.from)) continue;
      if (thickness.value <= plate.value * (1 + settled(conveyor.plant, 'TL355', threshold))) continue;
      yield {
        origin: thickness.origin,
        message: `This patch is ${lengthOn(conveyor, thickness.value)} thick, and the trough of ${conveyor.name} ${plate.text}.`,
      };
    }
  },
};

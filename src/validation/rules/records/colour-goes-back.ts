// Did an outer colour come back after a deeper one, or a colour after bare steel, on one liner?

import { originOf } from '../../../domain/model/records.js';
import { growthsOf } from '../../evidence/growth.js';
import { dayOfRow, readingWords } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';

export const colourGoesBack: Rule = {
  code: 'TL308',
  title: 'Colour that goes back to an earlier layer',
  severity: 'warning',
  restsOn: ['history'],
  why: 'A worn layer does not grow back: the panel was replaced, the wrong spot was looked at, or product covered the liner.',
  todo: 'Clean the spot and look again; if the panel was replaced, write the reline down.',
  given: 'estate',
  bad: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  P1 colour teal
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  «P1 colour ivory»
}`,
  good: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  P1 colour ivory
}
inspection DG1 2024-12-09 meter 4900 h {
  view downstream
  P1 colour teal
}`,
  *check({ estate }) {
    for (const { row, before, place, liner, kinds } of growthsOf(estate)) {
      if (kinds !== 'colour') continue;
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${place.name} of ${place.conveyor.name} shows ${readingWords(estate, row, liner)}, ` +
          `and showed ${readingWords(estate, before, liner)} on ${dayOfRow(estate, before)}.`,
        related: [
          {
            origin: originOf(estate.readings, before),
            message: `${readingWords(estate, before, liner)} on ${dayOfRow(estate, before)}`,
          },
        ],
      };
    }
  },
};

// Does a correction say who found the reading wrong, and why?

import type { Rule } from '../../rule.js';

export const correctionWithoutReason: Rule = {
  code: 'TL368',
  title: 'Correction without a name or a reason',
  severity: 'warning',
  restsOn: [],
  why: 'A number that was changed afterwards by nobody, for no reason, is the first thing a reviewer strikes out, and the last that anybody can defend.',
  todo: 'Add by whom (a role is enough) and why: … by "day shift" "the gauge was set for steel".',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift"|
correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"»`,
  cases: [
    {
      name: 'by nobody',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-09 does not count "wrong panel"»`,
    },
  ],
  *check({ estate }) {
    for (const { by, note, origin } of [...estate.corrections, ...estate.amendments]) {
      const missing = [by?.trim() ? '' : 'by whom', note?.trim() ? '' : 'why'].filter(Boolean);
      if (missing.length > 0)
        yield { origin, message: `This correction does not say ${missing.join(' and ')}.` };
    }
  },
};

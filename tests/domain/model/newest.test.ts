// Where nobody names a day it is that of the newest record, whatever kind it is of; a duty dated ahead is a plan.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { newestDay } from '../../../src/domain/model/newest.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const on = '2026-02-03';
const sound = inSoundEstate('estate', '');

test.each([
  `inspection DG1 ${on} meter 9000 h {\n  view downstream\n  P1 thickness 9 mm\n}`,
  `correction DG1 ${on} P1 read on 2025-03-10 thickness 9 mm by "day shift" "misread"`,
  `reline DG1 ${on} meter 9000 h {\n  liner TwoLayer12\n}`,
  `panels moved DG1 ${on} meter 9000 h {\n  panel 1 of run 1 turned end for end\n}`,
  `screw change DG1 ${on} meter 9000 h {\n  screw Spiral400\n}`,
  `meter change DG1 ${on} from 9000 h to 0 h`,
  `patch DG1 ${on} at 8 m to 8.4 m thickness 4 mm welded by "coded welder"`,
  `serviced DG1 ${on} gearbox oil changed`,
])('%s', (record) => {
  const { estate } = analyse([{ uri: 'a.trough', text: `${sound}\n${record}\n` }]);
  expect(newestDay(estate)).toBe(parseDay(on));
  const plan = `${sound}\n${record}\nduty DG1 from 2026-08-01 18 h/d\n`;
  expect(newestDay(analyse([{ uri: 'a.trough', text: plan }]).estate)).toBe(parseDay(on));
});

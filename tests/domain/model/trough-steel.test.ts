// Which steel a trough is of, by the names that stand on drawings and plates: EN 10027-2 numbers and AISI types of common sheet.

import { expect, test } from 'vitest';
import { troughSteel } from '../../../src/domain/model/trough-steel.js';

test.each([
  ['S235', 'carbon'],
  ['S355J2', 'carbon'],
  ['1.0038', 'carbon'],
  ['mild steel', 'carbon'],
  ['galvanised S235', 'galvanised'],
  ['1.4301', 'austenitic'],
  ['1.4404', 'austenitic'],
  ['1.4571', 'austenitic'],
  ['X5CrNi18-10', 'austenitic'],
  ['304', 'austenitic'],
  ['316L', 'austenitic'],
  ['AISI 321', 'austenitic'],
  ['stainless', 'austenitic'],
  ['1.4003', 'ferritic'],
  ['1.4016', 'ferritic'],
  ['430', 'ferritic'],
])('%s is %s', (name, family) => {
  expect(troughSteel(name)).toMatchObject({ family, named: true });
});

test.each(['sheet', '9.1', 'S', 'PE1000', ''])(
  '%s is no steel known here, and nothing is said where there is no name',
  (name) => {
    expect(troughSteel(name)).toMatchObject({ family: 'carbon', named: false });
    expect(troughSteel(undefined).named).toBe(false);
  },
);

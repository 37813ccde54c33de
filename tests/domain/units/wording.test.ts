// How a declared duration reads in a sentence.

import { expect, test } from 'vitest';
import { spoken } from '../../../src/domain/units/wording.js';

test.each([
  ['10 week', '10 weeks'],
  ['1 week', '1 week'],
  ['1.5 day', '1.5 days'],
  ['60 h', '60 h'],
  ['10 weeks', '10 weeks'],
])('%s reads %s', (written, said) => expect(spoken(written)).toBe(said));

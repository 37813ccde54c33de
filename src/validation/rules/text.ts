// TL1xx: the text itself, one rule for each kind of problem that reading it can meet.

import type { Rule } from '../rule.js';
import { ambiguousName } from './text/ambiguous-name.js';
import { clockForm } from './text/clock-form.js';
import { commaDecimal } from './text/comma-decimal.js';
import { conflictMarker } from './text/conflict-marker.js';
import { dateForm } from './text/date-form.js';
import { expiredSuppression } from './text/expired-suppression.js';
import { hiddenCharacter } from './text/hidden-character.js';
import { missingFact } from './text/missing-fact.js';
import { missingUnit } from './text/missing-unit.js';
import { tooMany } from './text/too-many.js';
import { noSuchDate } from './text/no-such-date.js';
import { notANumber } from './text/not-a-number.js';
import { outOfRange } from './text/out-of-range.js';
import { repeatedFact } from './text/repeated-fact.js';
import { repeatedName } from './text/repeated-name.js';
import { suppressionOfUnknownCode } from './text/suppression-of-unknown-code.js';
import { suppressionWithoutReason } from './text/suppression-without-reason.js';
import { syntax } from './text/syntax.js';
import { unknownColour } from './text/unknown-colour.js';
import { unknownName } from './text/unknown-name.js';
import { unknownPoint } from './text/unknown-point.js';
import { unknownUnit } from './text/unknown-unit.js';
import { unusedSuppression } from './text/unused-suppression.js';
import { wrongDimension } from './text/wrong-dimension.js';

export const textRules: readonly Rule[] = [
  syntax,
  missingUnit,
  unknownUnit,
  wrongDimension,
  commaDecimal,
  notANumber,
  outOfRange,
  dateForm,
  noSuchDate,
  clockForm,
  missingFact,
  repeatedFact,
  repeatedName,
  unknownName,
  ambiguousName,
  unknownPoint,
  unknownColour,
  suppressionWithoutReason,
  suppressionOfUnknownCode,
  unusedSuppression,
  expiredSuppression,
  conflictMarker,
  hiddenCharacter,
  tooMany,
];

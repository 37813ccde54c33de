// TL3xx: do the records agree with one another and with the machine?

import type { Rule } from '../rule.js';
import { datedFarAfterTheRest } from './records/dated-far-after-the-rest.js';
import { asFittedOffTheSpecification } from './records/as-fitted-off-the-specification.js';
import { asFittedOutsideTheScope } from './records/as-fitted-outside-the-scope.js';
import { belowTheCondemnLimit } from './records/below-the-condemn-limit.js';
import { colourAgainstThickness } from './records/colour-against-thickness.js';
import { colourGoesBack } from './records/colour-goes-back.js';
import { conditionAgainstAReading } from './records/condition-against-a-reading.js';
import { conditionClosedBeforeSeen } from './records/condition-closed-before-seen.js';
import { conditionIncomplete } from './records/condition-incomplete.js';
import { conditionNotAnswered } from './records/condition-not-answered.js';
import { photoMissing } from './records/photo-missing.js';
import { photoOutsideTheFolder } from './records/photo-outside-the-folder.js';
import { photoTooLarge } from './records/photo-too-large.js';
import { plateAtItsMinimum } from './records/plate-at-its-minimum.js';
import { plateThickerThanTheTrough } from './records/plate-thicker-than-the-trough.js';
import { bareSteelNotMeasured } from './records/bare-steel-not-measured.js';
import { currentRising } from './records/current-rising.js';
import { dutyAgainstTheMeter } from './records/duty-against-the-meter.js';
import { fittedOutsideTheTemperatureBand } from './records/fitted-outside-the-temperature-band.js';
import { fittedPanelsDoNotFillTheRun } from './records/fitted-panels-do-not-fill-the-run.js';
import { flightBelowItsLimit } from './records/flight-below-its-limit.js';
import { flightDeeperThanNew } from './records/flight-deeper-than-new.js';
import { gaugeNotStated } from './records/gauge-not-stated.js';
import { holdDownGapWide } from './records/hold-down-gap-wide.js';
import { holdDownNotDeclared } from './records/hold-down-not-declared.js';
import { inspectedOnTheDayOfAReline } from './records/inspected-on-the-day-of-a-reline.js';
import { inspectionPastedTwice } from './records/inspection-pasted-twice.js';
import { inspectionWithNothingInIt } from './records/inspection-with-nothing-in-it.js';
import { intervalWithinTheError } from './records/interval-within-the-error.js';
import { meterFasterThanTheClock } from './records/meter-faster-than-the-clock.js';
import { meterRunsBack } from './records/meter-runs-back.js';
import { notInspectedForLong } from './records/not-inspected-for-long.js';
import { photoPathOfOneMachine } from './records/photo-path-of-one-machine.js';
import { placeReadTwice } from './records/place-read-twice.js';
import { readingBeyondTheConveyor } from './records/reading-beyond-the-conveyor.js';
import { readingOfUnlikelySize } from './records/reading-of-unlikely-size.js';
import { readingOutsideTheArc } from './records/reading-outside-the-arc.js';
import { recordBeforeCommissioning } from './records/record-before-commissioning.js';
import { relineScopeNotThere } from './records/reline-scope-not-there.js';
import { relinesDaysApart } from './records/relines-days-apart.js';
import { seenFromTheWrongEnd } from './records/seen-from-the-wrong-end.js';
import { startOfTheHoursUnknown } from './records/start-of-the-hours-unknown.js';
import { thickerThanBefore } from './records/thicker-than-before.js';
import { thickerThanFitted } from './records/thicker-than-fitted.js';
import { tonnesNotRecorded } from './records/tonnes-not-recorded.js';
import { tonnesRunBack } from './records/tonnes-run-back.js';
import { troughShowing } from './records/trough-showing.js';
import { viewNotStated } from './records/view-not-stated.js';
import { wornWidthTooWide } from './records/worn-width-too-wide.js';

export const recordRules: readonly Rule[] = [
  meterRunsBack,
  meterFasterThanTheClock,
  recordBeforeCommissioning,
  inspectionPastedTwice,
  thickerThanFitted,
  thickerThanBefore,
  colourAgainstThickness,
  colourGoesBack,
  troughShowing,
  belowTheCondemnLimit,
  viewNotStated,
  readingOutsideTheArc,
  intervalWithinTheError,
  inspectedOnTheDayOfAReline,
  relineScopeNotThere,
  relinesDaysApart,
  gaugeNotStated,
  notInspectedForLong,
  seenFromTheWrongEnd,
  wornWidthTooWide,
  holdDownGapWide,
  flightBelowItsLimit,
  currentRising,
  inspectionWithNothingInIt,
  startOfTheHoursUnknown,
  readingBeyondTheConveyor,
  tonnesRunBack,
  flightDeeperThanNew,
  holdDownNotDeclared,
  placeReadTwice,
  tonnesNotRecorded,
  readingOfUnlikelySize,
  asFittedOffTheSpecification,
  asFittedOutsideTheScope,
  fittedPanelsDoNotFillTheRun,
  fittedOutsideTheTemperatureBand,
  dutyAgainstTheMeter,
  photoPathOfOneMachine,
  datedFarAfterTheRest,
  conditionAgainstAReading,
  conditionClosedBeforeSeen,
  conditionIncomplete,
  conditionNotAnswered,
  photoMissing,
  photoOutsideTheFolder,
  photoTooLarge,
  plateAtItsMinimum,
  plateThickerThanTheTrough,
  bareSteelNotMeasured,
];

// TL2xx: can the machine be as it is described?

import type { Rule } from '../rule.js';
import { stepBetweenLiners } from './geometry/step-between-liners.js';
import { boltsTooFarApart } from './geometry/bolts-too-far-apart.js';
import { breakOverFlange } from './geometry/break-over-flange.js';
import { breaksOverlap } from './geometry/breaks-overlap.js';
import { clearanceOutsideItsBand } from './geometry/clearance-outside-its-band.js';
import { colourChangesTooLate } from './geometry/colour-changes-too-late.js';
import { condemnLimitNotBelowThickness } from './geometry/condemn-limit-not-below-thickness.js';
import { condemnLimitTooThinToMeasure } from './geometry/condemn-limit-too-thin-to-measure.js';
import { boltHeadProud } from './geometry/bolt-head-proud.js';
import { boltTooShort } from './geometry/bolt-too-short.js';
import { boltsOverTightened } from './geometry/bolts-over-tightened.js';
import { drillAgainstBolt } from './geometry/drill-against-bolt.js';
import { countersinkReachesTheNextColour } from './geometry/countersink-reaches-the-next-colour.js';
import { coversOverlap } from './geometry/covers-overlap.js';
import { daysRunBackwards } from './geometry/days-run-backwards.js';
import { driveTooWeak } from './geometry/drive-too-weak.js';
import { dutyAboveTheClock } from './geometry/duty-above-the-clock.js';
import { fullerThanUsual } from './geometry/fuller-than-usual.js';
import { handAgainstRotation } from './geometry/hand-against-rotation.js';
import { holdDownMissingInTheRow } from './geometry/hold-down-missing-in-the-row.js';
import { hotterThanTheLinerBears } from './geometry/hotter-than-the-liner-bears.js';
import { innerFlightFoulsTheOuter } from './geometry/inner-flight-fouls-the-outer.js';
import { jointGapCloses } from './geometry/joint-gap-closes.js';
import { layersAgainstThickness } from './geometry/layers-against-thickness.js';
import { moreThanTheScrewCarries } from './geometry/more-than-the-screw-carries.js';
import { noFirmEnd } from './geometry/no-firm-end.js';
import { noIsolationPoint } from './geometry/no-isolation-point.js';
import { offSizeScrew } from './geometry/off-size-screw.js';
import { outagesOverlap } from './geometry/outages-overlap.js';
import { panelHeavyToHandle } from './geometry/panel-heavy-to-handle.js';
import { partOutsideTheLength } from './geometry/part-outside-the-length.js';
import { partsTwiceInOnePlace } from './geometry/parts-twice-in-one-place.js';
import { pointInABreak } from './geometry/point-in-a-break.js';
import { pointOnTheFarSide } from './geometry/point-on-the-far-side.js';
import { pointOutsideTheArc } from './geometry/point-outside-the-arc.js';
import { pointsInOneSpot } from './geometry/points-in-one-spot.js';
import { pushedWithoutHoldDowns } from './geometry/pushed-without-hold-downs.js';
import { rangeRunsBackwards } from './geometry/range-runs-backwards.js';
import { runThatClosesNowhere } from './geometry/run-that-closes-nowhere.js';
import { screwAboveTheTrough } from './geometry/screw-above-the-trough.js';
import { screwDoesNotFit } from './geometry/screw-does-not-fit.js';
import { screwProportions } from './geometry/screw-proportions.js';
import { sectionsTileTheLength } from './geometry/sections-tile-the-length.js';
import { soundVelocityNotOfPe } from './geometry/sound-velocity-not-of-pe.js';
import { specificationNothingUses } from './geometry/specification-nothing-uses.js';
import { spiralTurnsFast } from './geometry/spiral-turns-fast.js';
import { stretchWithoutAccess } from './geometry/stretch-without-access.js';
import { unlikelySize } from './geometry/unlikely-size.js';
import { unusualPitch } from './geometry/unusual-pitch.js';
import { unusualResistance } from './geometry/unusual-resistance.js';
import { wornSectorOutsideTheArc } from './geometry/worn-sector-outside-the-arc.js';

export const geometryRules: readonly Rule[] = [
  screwDoesNotFit,
  clearanceOutsideItsBand,
  screwProportions,
  innerFlightFoulsTheOuter,
  unusualPitch,
  layersAgainstThickness,
  condemnLimitNotBelowThickness,
  colourChangesTooLate,
  handAgainstRotation,
  wornSectorOutsideTheArc,
  sectionsTileTheLength,
  partOutsideTheLength,
  rangeRunsBackwards,
  breaksOverlap,
  breakOverFlange,
  partsTwiceInOnePlace,
  pushedWithoutHoldDowns,
  countersinkReachesTheNextColour,
  boltHeadProud,
  boltTooShort,
  boltsOverTightened,
  drillAgainstBolt,
  boltsTooFarApart,
  hotterThanTheLinerBears,
  panelHeavyToHandle,
  driveTooWeak,
  moreThanTheScrewCarries,
  spiralTurnsFast,
  fullerThanUsual,
  screwAboveTheTrough,
  offSizeScrew,
  pointInABreak,
  pointOutsideTheArc,
  stretchWithoutAccess,
  noIsolationPoint,
  noFirmEnd,
  runThatClosesNowhere,
  unlikelySize,
  holdDownMissingInTheRow,
  pointsInOneSpot,
  pointOnTheFarSide,
  unusualResistance,
  dutyAboveTheClock,
  daysRunBackwards,
  outagesOverlap,
  jointGapCloses,
  condemnLimitTooThinToMeasure,
  soundVelocityNotOfPe,
  coversOverlap,
  specificationNothingUses,
  stepBetweenLiners,
];

// TL4xx: can the job be done, in the order written?

import { hotWorkNotWatched } from './jobs/hot-work-not-watched.js';
import { loneWorker } from './jobs/lone-worker.js';
import { gateOpenBetween } from './jobs/gate-open-between.js';
import { platformOverloaded } from './jobs/platform-overloaded.js';
import { spiralFromTheMiddle } from './jobs/spiral-from-the-middle.js';
import { hotWorkNotConfirmed } from './jobs/hot-work-not-confirmed.js';
import { twoJobsAtOnce } from './jobs/two-jobs-at-once.js';
import { closingPieceTooShort } from './jobs/closing-piece-too-short.js';
import { panelThroughHatch } from './jobs/panel-through-hatch.js';
import { fittedUpward } from './jobs/fitted-upward.js';
import { barrierIsNoGate } from './jobs/barrier-is-no-gate.js';
import { clauseWithoutUse } from './jobs/clause-without-use.js';
import { hatchTooSmall } from './jobs/hatch-too-small.js';
import { liftBesideItsCentre } from './jobs/lift-beside-its-centre.js';
import { gasTestNotRepeated } from './jobs/gas-test-not-repeated.js';
import type { Rule } from '../rule.js';
import { accessUnitInTwoPlaces } from './jobs/access-unit-in-two-places.js';
import { circularOrder } from './jobs/circular-order.js';
import { closedUpTooEarly } from './jobs/closed-up-too-early.js';
import { closesInsideTheRun } from './jobs/closes-inside-the-run.js';
import { closingErrorTooLarge } from './jobs/closing-error-too-large.js';
import { closingPieceLongerThanAPanel } from './jobs/closing-piece-longer-than-a-panel.js';
import { crewInTwoPlaces } from './jobs/crew-in-two-places.js';
import { crewNamedTwice } from './jobs/crew-named-twice.js';
import { crewOnTwoJobs } from './jobs/crew-on-two-jobs.js';
import { doneTwice } from './jobs/done-twice.js';
import { emptiedTooLate } from './jobs/emptied-too-late.js';
import { gasTestMissing } from './jobs/gas-test-missing.js';
import { gateOutOfTurn } from './jobs/gate-out-of-turn.js';
import { handedBackTooEarly } from './jobs/handed-back-too-early.js';
import { hotWorkOverLiner } from './jobs/hot-work-over-liner.js';
import { isolationMissing } from './jobs/isolation-missing.js';
import { jobAlreadyPast } from './jobs/job-already-past.js';
import { jobWithNoCrew } from './jobs/job-with-no-crew.js';
import { jobWithNothingToDo } from './jobs/job-with-nothing-to-do.js';
import { liftBeyondTheLiftingPoint } from './jobs/lift-beyond-the-lifting-point.js';
import { liftOverTheLimit } from './jobs/lift-over-the-limit.js';
import { linerNotStripped } from './jobs/liner-not-stripped.js';
import { massUnknown } from './jobs/mass-unknown.js';
import { noAccess } from './jobs/no-access.js';
import { noAccessUnit } from './jobs/no-access-unit.js';
import { noLiftLimit } from './jobs/no-lift-limit.js';
import { noRunInTheScope } from './jobs/no-run-in-the-scope.js';
import { noSuchStretch } from './jobs/no-such-stretch.js';
import { noTrialRun } from './jobs/no-trial-run.js';
import { noWelder } from './jobs/no-welder.js';
import { notOpenedUp } from './jobs/not-opened-up.js';
import { notPutBack } from './jobs/not-put-back.js';
import { orderedTooLate } from './jobs/ordered-too-late.js';
import { panelBeyondTheTeam } from './jobs/panel-beyond-the-team.js';
import { panelOnItsOwn } from './jobs/panel-on-its-own.js';
import { panelWouldSlide } from './jobs/panel-would-slide.js';
import { rescueNotArranged } from './jobs/rescue-not-arranged.js';
import { spiralHeldUpTooWeakly } from './jobs/spiral-held-up-too-weakly.js';
import { runThatCannotBeClosed } from './jobs/run-that-cannot-be-closed.js';
import { runTooEarly } from './jobs/run-too-early.js';
import { scopeNamedTwice } from './jobs/scope-named-twice.js';
import { scopeNotDone } from './jobs/scope-not-done.js';
import { scopeTooSmall } from './jobs/scope-too-small.js';
import { screwNotRestrained } from './jobs/screw-not-restrained.js';
import { screwOutOfTurn } from './jobs/screw-out-of-turn.js';
import { slingAngleTooFlat } from './jobs/sling-angle-too-flat.js';
import { stepByACrewNotOnTheJob } from './jobs/step-by-a-crew-not-on-the-job.js';
import { teamLiftBeyondTheGuideline } from './jobs/team-lift-beyond-the-guideline.js';
import { troughNotCleaned } from './jobs/trough-not-cleaned.js';
import { twoFronts } from './jobs/two-fronts.js';
import { windowOutsideTheOutages } from './jobs/window-outside-the-outages.js';
import { windowTooShort } from './jobs/window-too-short.js';
import { workBelowLooseParts } from './jobs/work-below-loose-parts.js';

export const jobRules: readonly Rule[] = [
  panelOnItsOwn,
  twoFronts,
  closesInsideTheRun,
  closingErrorTooLarge,
  panelWouldSlide,
  isolationMissing,
  gasTestMissing,
  notOpenedUp,
  linerNotStripped,
  troughNotCleaned,
  closedUpTooEarly,
  handedBackTooEarly,
  runTooEarly,
  screwNotRestrained,
  screwOutOfTurn,
  hotWorkOverLiner,
  crewInTwoPlaces,
  accessUnitInTwoPlaces,
  noAccess,
  noAccessUnit,
  workBelowLooseParts,
  doneTwice,
  notPutBack,
  scopeNotDone,
  noTrialRun,
  circularOrder,
  noSuchStretch,
  windowOutsideTheOutages,
  crewNamedTwice,
  jobWithNoCrew,
  jobWithNothingToDo,
  jobAlreadyPast,
  liftBeyondTheLiftingPoint,
  slingAngleTooFlat,
  stepByACrewNotOnTheJob,
  teamLiftBeyondTheGuideline,
  orderedTooLate,
  crewOnTwoJobs,
  scopeNamedTwice,
  panelBeyondTheTeam,
  closingPieceLongerThanAPanel,
  noRunInTheScope,
  runThatCannotBeClosed,
  scopeTooSmall,
  windowTooShort,
  noWelder,
  liftOverTheLimit,
  noLiftLimit,
  massUnknown,
  emptiedTooLate,
  gateOutOfTurn,
  gasTestNotRepeated,
  liftBesideItsCentre,
  hatchTooSmall,
  clauseWithoutUse,
  barrierIsNoGate,
  fittedUpward,
  panelThroughHatch,
  closingPieceTooShort,
  twoJobsAtOnce,
  hotWorkNotConfirmed,
  spiralFromTheMiddle,
  platformOverloaded,
  gateOpenBetween,
  loneWorker,
  hotWorkNotWatched,
  rescueNotArranged,
  spiralHeldUpTooWeakly,
];

// Where the joints of a run will lie: a run that is relined whole gets a new layout from the end its panels go in from, clear
// of trough flanges and hold-downs; a run of which only some panels change, or none, keeps the layout it has.

import type { PanelLayout } from '../geometry/panel-layout.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { installedPanels, type InstalledPanels } from '../model/panels.js';
import { panelsOf, placesToAvoid } from '../model/run-layout.js';
import { findRun, type Run } from '../model/runs.js';
import type { LinerSpecification } from '../model/specifications.js';
import type { Stretch } from '../model/stretch.js';
import type { End } from './start.js';

export interface RunLayout {
  readonly liner: LinerSpecification;
  readonly start: End;
  /** Joints and panels in chainages, mm. */
  readonly layout: PanelLayout;
  /** True where panels that stay in the run fix the joints. */
  readonly kept: boolean;
  readonly reckonedFor?: InstalledPanels['reckonedFor'];
}

const cache = new WeakMap<Estate, WeakMap<Job['relines'], Map<string, RunLayout>>>();

export function layoutOf(job: Job, run: Run, start: End, estate: Estate): RunLayout {
  let ofEstate = cache.get(estate);
  if (!ofEstate) cache.set(estate, (ofEstate = new WeakMap()));
  let known = ofEstate.get(job.relines);
  if (!known) ofEstate.set(job.relines, (known = new Map()));
  const key = `${job.conveyor.name} ${run.number} ${start}`;
  const found = known.get(key);
  if (found) return found;
  const fresh = layOut(job, run, start, estate);
  known.set(key, fresh);
  return fresh;
}

function layOut(job: Job, run: Run, start: End, estate: Estate): RunLayout {
  const relined = job.relines.filter(({ stretch }) => concerns(job, stretch, run));
  const whole = relined.find(
    ({ stretch }) =>
      stretch.kind === 'all' ||
      stretch.kind === 'run' ||
      (stretch.kind === 'chainage' && stretch.from.value <= run.from && stretch.to.value >= run.to),
  );
  if (!whole) {
    const { liner, layout, reckonedFor } = installedPanels(estate, run);
    return { liner: relined[0]?.liner ?? liner, start, layout, kept: true, reckonedFor };
  }
  const layout = panelsOf(run, whole.liner, {
    start,
    minimumClosingPiece: job.minimumClosingPiece.value,
    avoid: placesToAvoid(run, job.jointClearance.value),
  });
  return { liner: whole.liner, start, layout, kept: false };
}

/** True where a stretch of the job touches the run. */
export function concerns(job: Job, stretch: Stretch, run: Run): boolean {
  switch (stretch.kind) {
    case 'all':
      return true;
    case 'run':
    case 'panels':
      return findRun(job.conveyor, stretch.run) === run;
    case 'chainage':
      return stretch.from.value < run.to && stretch.to.value > run.from;
  }
}

// Where the joints of a run will lie: a run that is relined whole gets a new layout from the end its panels go in from, clear
// of trough flanges and hold-downs; a run of which only some panels change keeps the layout it has.

import { layPanels, type KeepClear, type PanelLayout } from '../geometry/panel-layout.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { findRun, type Run } from '../model/runs.js';
import type { LinerSpecification } from '../model/specifications.js';
import type { End } from './start.js';

export interface RunLayout {
  readonly liner: LinerSpecification;
  readonly start: End;
  /** Chainages, tail end first, mm. */
  readonly ends: readonly number[];
  /** Offsets from the tail end of the run. */
  readonly layout: PanelLayout;
  /** True where panels that stay in the run fix the joints. */
  readonly kept: boolean;
}

const cache = new WeakMap<Job['relines'], Map<string, RunLayout>>();

export function layoutOf(job: Job, run: Run, start: End, estate: Estate): RunLayout {
  let known = cache.get(job.relines);
  if (!known) cache.set(job.relines, (known = new Map()));
  const key = `${run.number} ${start}`;
  const found = known.get(key);
  if (found) return found;
  const fresh = layOut(job, run, start, estate);
  known.set(key, fresh);
  return fresh;
}

function layOut(job: Job, run: Run, start: End, _estate: Estate): RunLayout {
  const liner = linerFor(job, run);
  const layout = layPanels({
    length: run.length,
    panelLengths: liner.panelLengths.length > 0 ? liner.panelLengths.map((length) => length.value) : [run.length],
    start,
    minimumClosingPiece: job.minimumClosingPiece.value,
    avoid: placesToAvoid(job, run),
    gap: liner.joint.policy === 'gap' ? liner.joint.gap.value : 0,
  });
  return { liner, start, ends: layout.joints.map((at) => run.from + at), layout, kept: false };
}

/** Flanges of the trough and hold-down bolts inside the run, as offsets from its tail end. */
export function placesToAvoid(job: Job, run: Run): KeepClear[] {
  const { conveyor } = job;
  const flanges = conveyor.sections.slice(1).map((section) => section.start);
  const holdDowns = conveyor.holdDowns.map((part) => (part.from.value + part.to.value) / 2);
  return [...flanges, ...holdDowns]
    .filter((at) => at > run.from && at < run.to)
    .sort((a, b) => a - b)
    .map((at) => ({ at: at - run.from, clearance: job.jointClearance.value }));
}

/** The liner the job puts into a run; the conveyor's own where the job says nothing about it. */
export function linerFor(job: Job, run: Run): LinerSpecification {
  const found = job.relines.find(({ stretch }) => {
    switch (stretch.kind) {
      case 'all':
        return true;
      case 'run':
      case 'panels':
        return findRun(job.conveyor, stretch.run) === run;
      case 'chainage':
        return stretch.from.value < run.to && stretch.to.value > run.from;
    }
  });
  return found?.liner ?? job.conveyor.liner;
}

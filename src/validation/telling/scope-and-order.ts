// What a job asks for and what its order does, brought together: by the scope, or by the steps where the order can be built as well
// with them.

import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import { panelsText, runUseText, sideBySide, type Run } from '../../domain/model/runs.js';
import { beyondScope, type BeyondScope } from '../../domain/order/beyond-scope.js';
import { changeJob } from '../../domain/order/change-steps.js';
import { editsOf } from '../../domain/order/edits.js';
import { areasOf, groundOf, within, type Ground } from '../../domain/order/ground.js';
import { judge } from '../../domain/order/judge.js';
import { concerns } from '../../domain/order/layout.js';
import type { StepChange } from '../../domain/order/violation.js';
import { stretchText } from '../../domain/order/words.js';
import type { Edit, Fix } from '../finding.js';
import { insertAfter, insertBefore, replace } from './fixes.js';

/** Strip, clean and fit as the one reline of the run has it; none where that leaves more wrong than there is now. */
export function stepsAsTheScope(job: Job, estate: Estate, run: Run): readonly Fix[] {
  const [only, another] = job.relines.filter(({ stretch }) => concerns(job, stretch, run));
  if (!only || another || !job.order) return [];
  const ground = groundOf(job, job.order.steps, estate);
  const changes = stepsOnLiner(ground, run).map((step): StepChange => ({
    change: 'set stretch',
    step,
    stretch: only.stretch,
  }));
  const now = changeJob(job, changes);
  const edits = editsOf(job, changes);
  if (edits.length === 0 || judge(now, estate).length > judge(job, estate).length) return [];
  return [{ title: `Strip, clean and fit ${stretchText(only.stretch)}`, edits }];
}

/** The scope that goes with a change of the order, where it asked for all of it before and does not after; no edits otherwise. */
export function scopeToFollow(job: Job, changes: readonly StepChange[], estate: Estate): readonly Edit[] {
  const beyond = (one: Job): readonly BeyondScope[] =>
    beyondScope(groundOf(one, one.order?.steps ?? [], estate));
  if (beyond(job).length > 0) return [];
  const [after, another] = beyond(changeJob(job, changes));
  return after && !another ? scopeAsTheOrder(job, after).edits : [];
}

/** Those that work on the liner of this run and of no other. */
function stepsOnLiner(ground: Ground, run: Run): Ground['steps'] {
  return ground.steps.filter(({ action }, i) => {
    if (action !== 'strip' && action !== 'clean' && action !== 'fit') return false;
    const runs = ground.runs.filter(({ panels }) => within(panels, areasOf(ground, i)).length > 0);
    return runs.length === 1 && runs[0]?.run === run;
  });
}

/** What is relined as the order strips and fits it. */
export function scopeAsTheOrder(job: Job, { run, panels, asked, scope }: BeyondScope): Fix {
  const all = [...asked, ...panels].sort((a, b) => a - b);
  const [only, another] = scope;
  const one =
    only?.stretch.kind === 'panels' && !another && sideBySide(all).length === 1 ? only.stretch : undefined;
  const named = one ? runUseText(one.run) : String(run.run.number);
  const said = (numbers: readonly number[]): readonly string[] =>
    sideBySide(numbers).map(({ first, last }) =>
      last - first + 1 === run.panels.length ? `run ${named}` : panelsText(first, last, named),
    );
  if (one) {
    const text = said(all).join('');
    return replace(one.origin, text, { title: `Reline ${text}` });
  }
  const parts = said(panels);
  const liner = only?.linerUse ? ` with ${only.linerUse.name}` : '';
  const lines = parts.map((part) => `reline ${part}${liner}`);
  const title = `Reline ${parts.join(' and ')} too`;
  const last = job.relines.at(-1);
  if (last) return insertAfter(last.origin, lines.map((line) => `\n  ${line}`).join(''), title);
  return insertBefore(job.order?.origin ?? job.origin, lines.map((line) => `${line}\n  `).join(''), title);
}

// Carries out changes of a written order on the steps themselves, so that a repair can be tried before it is offered.

import type { Job, Step } from '../model/job.js';
import type { StepChange } from './violation.js';

/** The job with its order changed; changes that name a step the order does not hold are left out. */
export function changeJob(job: Job, changes: readonly StepChange[]): Job {
  if (!job.order) return job;
  return { ...job, order: { ...job.order, steps: changeSteps(job.order.steps, changes) } };
}

export function changeSteps(steps: readonly Step[], changes: readonly StepChange[]): Step[] {
  let rows = steps.map((step) => ({ id: step, step }));
  const find = (id: Step): number => rows.findIndex((row) => row.id === id);
  const set = (id: Step, make: (step: Step) => Step): void => {
    rows = rows.map((row) => (row.id === id ? { id, step: make(row.step) } : row));
  };
  for (const change of changes) {
    switch (change.change) {
      case 'set start':
        set(change.step, (step) => ({ ...step, start: change.start }));
        break;
      case 'set stretch':
        set(change.step, (step) => ({ ...step, stretch: change.stretch }));
        break;
      case 'set crews':
        set(change.step, (step) => ({ ...step, crews: change.crews }));
        break;
      case 'set heat':
        set(change.step, (step) => ({ ...step, heat: change.heat }));
        break;
      case 'set attendants':
        set(change.step, (step) => ({ ...step, attendants: change.attendants }));
        break;
      case 'set aboard':
        set(change.step, (step) => ({ ...step, aboard: change.aboard }));
        break;
      case 'set takes':
        set(change.step, (step) => ({ ...step, takes: change.takes }));
        break;
      case 'cut to fit':
        set(change.step, (step) => ({ ...step, cutToFit: true }));
        break;
      case 'add after': {
        const target = find(change.after);
        const named = rows[target];
        if (!named || find(change.step) < 0) break;
        const name = named.step.name ?? freshName(rows.map((row) => row.step));
        set(change.after, (step) => ({ ...step, name }));
        set(change.step, (step) =>
          step.after.some((use) => use.name === name)
            ? step
            : { ...step, after: [...step.after, { name, origin: step.origin }] },
        );
        break;
      }
      case 'drop after':
        set(change.step, (step) => ({
          ...step,
          after: step.after.filter((use) => use.name !== change.name),
        }));
        break;
      case 'move': {
        const row = rows[find(change.step)];
        if (!row || find(change.other) < 0 || change.step === change.other) break;
        rows = rows.filter((other) => other !== row);
        rows.splice(find(change.other) + (change.place === 'after' ? 1 : 0), 0, row);
        break;
      }
      case 'insert': {
        const at = find(change.other);
        if (at >= 0)
          rows.splice(at + (change.place === 'after' ? 1 : 0), 0, { id: change.step, step: change.step });
        break;
      }
      case 'append':
        rows.push({ id: change.step, step: change.step });
        break;
      case 'remove': {
        const row = rows[find(change.step)];
        if (!row) break;
        rows = rows.filter((other) => other !== row);
        const { name } = row.step;
        if (name !== undefined)
          rows = rows.map(({ id, step }) => ({
            id,
            step: step.after.some((use) => use.name === name)
              ? { ...step, after: redirect(step, name, row.step) }
              : step,
          }));
        break;
      }
    }
  }
  return rows.map((row) => row.step);
}

/** Who waited for a removed step waits for what it waited for. */
function redirect(step: Step, name: string, removed: Step): Step['after'] {
  const kept = step.after.filter((use) => use.name !== name);
  return [...kept, ...removed.after.filter((use) => !kept.some((other) => other.name === use.name))];
}

/** `s1`, `s2`, … whichever the order does not use yet. */
export function freshName(steps: readonly Step[]): string {
  for (let n = 1; ; n++) if (!steps.some((step) => step.name === `s${n}`)) return `s${n}`;
}

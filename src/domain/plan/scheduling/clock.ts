// Working time against the clock: nights and other pauses take no working time, but paint dries and embers glow through them.
// How much later by the clock may or must one thing be than another? A pause at the very moment where something ends, or where
// something begins, lies between the two. Times are whole units of working time.

export interface Pause {
  readonly at: number;
  /** Units of clock time that pass there. */
  readonly length: number;
}

/** The first time from `finish` on by which so much clock time has passed. */
export function passed(pauses: readonly Pause[], finish: number, wait: number): number {
  let slept = 0;
  for (let k = firstFrom(pauses, finish); k < pauses.length; k++) {
    const pause = pauses[k];
    if (!pause || finish + wait - slept < pause.at) break;
    slept += pause.length;
    if (pause.at - finish + slept >= wait) return pause.at;
  }
  return Math.max(finish, finish + wait - slept);
}

/** The latest finish after which so much clock time has passed at `start`; the mirror image of `passed`. */
export function leavesTime(pauses: readonly Pause[], start: number, wait: number): number {
  let slept = 0;
  for (let k = firstFrom(pauses, start + 1) - 1; k >= 0; k--) {
    const pause = pauses[k];
    if (!pause || start - wait + slept > pause.at) break;
    slept += pause.length;
    if (start - pause.at + slept >= wait) return pause.at;
  }
  return Math.min(start, start - wait + slept);
}

/** Clock time from a finish to a start that is no sooner. */
export function between(pauses: readonly Pause[], finish: number, start: number): number {
  let time = start - finish;
  for (let k = firstFrom(pauses, finish); k < pauses.length; k++) {
    const pause = pauses[k];
    if (!pause || pause.at > start) break;
    time += pause.length;
  }
  return time;
}

/** The latest start that is no more than so much clock time after the finish; below the finish where there is none. */
export function noLater(pauses: readonly Pause[], finish: number, most: number): number {
  let left = most;
  for (let k = firstFrom(pauses, finish); k < pauses.length; k++) {
    const pause = pauses[k];
    if (!pause || pause.at > finish + left) break;
    if (pause.at - finish + pause.length > left) return pause.at - 1;
    left -= pause.length;
  }
  return finish + left;
}

/** The earliest finish of which the start is no more than so much clock time away; above the start where there is none. */
export function noSooner(pauses: readonly Pause[], start: number, most: number): number {
  let left = most;
  for (let k = firstFrom(pauses, start + 1) - 1; k >= 0; k--) {
    const pause = pauses[k];
    if (!pause || pause.at < start - left) break;
    if (start - pause.at + pause.length > left) return pause.at + 1;
    left -= pause.length;
  }
  return start - left;
}

/** Position of the first pause at or after the time. */
function firstFrom(pauses: readonly Pause[], at: number): number {
  let a = 0;
  let b = pauses.length;
  while (a < b) {
    const mid = (a + b) >> 1;
    if ((pauses[mid]?.at ?? 0) >= at) b = mid;
    else a = mid + 1;
  }
  return a;
}

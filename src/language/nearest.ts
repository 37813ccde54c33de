// Names that an author may have meant: the known names by how many slips of the finger they lie from what was written
// (a letter left out, put in, changed, or two changed over), letter case aside.

/** `known` sorted nearest first, then by the alphabet; with `within`, only those at most so many slips away. */
export function nearest(name: string, known: readonly string[], within = Infinity): readonly string[] {
  const wanted = name.toLowerCase();
  return known
    .map((one) => ({ one, slips: slips(wanted, one.toLowerCase()) }))
    .filter(
      ({ one, slips: far }) =>
        far <= Math.min(within, within === Infinity ? Infinity : Math.max(1, Math.floor(one.length / 2))),
    )
    .sort((a, b) => a.slips - b.slips || (a.one < b.one ? -1 : a.one > b.one ? 1 : 0))
    .map(({ one }) => one);
}

/** Optimal string alignment distance (Damerau–Levenshtein without overlapping swaps). */
function slips(a: string, b: string): number {
  if (a === b) return 0;
  const far = Math.max(a.length, b.length);
  if (far > 64) return far;
  let twoAgo: number[] = [];
  let before = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const now = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let best = Math.min(
        (before[column] ?? far) + 1,
        (now[column - 1] ?? far) + 1,
        (before[column - 1] ?? far) + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1])
        best = Math.min(best, (twoAgo[column - 2] ?? far) + 1);
      now.push(best);
    }
    twoAgo = before;
    before = now;
  }
  return before[b.length] ?? far;
}

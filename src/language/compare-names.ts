// In which order do names stand for a reader? One rule for the estate, its messages and the editor.

/** By the alphabet, numbers in names by their value: DG2 before DG10. The same everywhere, whatever the reader's language. */
export function compareNames(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const [one = '', other = ''] = [left[i], right[i]];
    const numbers = /^\d/.test(one) && /^\d/.test(other) ? Number(one) - Number(other) : 0;
    if (numbers !== 0) return numbers;
    if (one !== other && !(/^\d/.test(one) && /^\d/.test(other))) return one < other ? -1 : 1;
  }
  return left.length - right.length || (a < b ? -1 : a > b ? 1 : 0);
}

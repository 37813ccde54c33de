// Offsets of a text as line and column, both from 1, columns in UTF-16 code units as editors count them.

export interface Lines {
  /** An offset outside the text counts as its nearest end. */
  at(offset: number): { readonly line: number; readonly column: number };
}

export function linesOf(text: string): Lines {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 13 && text.charCodeAt(i + 1) === 10) continue;
    if (code === 10 || code === 13) starts.push(i + 1);
  }
  return {
    at(offset) {
      const inside = Math.min(Math.max(0, offset), text.length);
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((starts[middle] ?? 0) <= inside) low = middle;
        else high = middle - 1;
      }
      return { line: low + 1, column: inside - (starts[low] ?? 0) + 1 };
    },
  };
}

// How lists and counts read in a message.

/** `a`, `a and b`, `a, b and c`; at most `most` of them, then `and 4 more`. */
export function list(words: readonly string[], joint: 'and' | 'or' = 'and', most = 5): string {
  if (words.length <= 1) return words[0] ?? '';
  if (words.length > most) return `${words.slice(0, most).join(', ')} ${joint} ${words.length - most} more`;
  return `${words.slice(0, -1).join(', ')} ${joint} ${words[words.length - 1] ?? ''}`;
}

/** `1 panel`, `3 panels`. */
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

/** `a liner`, `an inlet`. */
export function withArticle(noun: string): string {
  return `${/^[aeiou]/i.test(noun) ? 'an' : 'a'} ${noun}`;
}

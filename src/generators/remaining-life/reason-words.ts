// Why the model gives no interval, and what would help: the same words on the page and in the editor.

/** Why the model gives no interval, and what would help. */
export function whyNot(why: string): string {
  switch (why) {
    case 'nothing to borrow from':
    case 'no records and nothing expected':
      return 'too few records for an interval; an expected life on the liner, or another look, would help';
    case 'no lower bound on the rate':
    case 'only bounds and nothing expected':
    case 'the records only bound the rate':
      return 'the records only say how fast it does not wear; a thickness, or an expected life on the liner, would help';
    case 'it does not run':
      return 'its duty is nothing';
    default:
      return why;
  }
}

// The check of a rule that reports one kind of problem of the text.

import type { Problem, ProblemKind } from '../../domain/model/problem.js';
import type { Found } from '../finding.js';
import type { RuleInput } from '../rule.js';

type Of<K extends ProblemKind> = Extract<Problem, { readonly kind: K }>;

export function onProblem<K extends ProblemKind>(
  kind: K,
  say: (problem: Of<K>, input: RuleInput) => Omit<Found, 'origin'>,
) {
  return function* (input: RuleInput): Iterable<Found> {
    for (const problem of input.problems) {
      if (isOf(problem, kind)) yield { origin: problem.origin, ...say(problem, input) };
    }
  };
}

function isOf<K extends ProblemKind>(problem: Problem, kind: K): problem is Of<K> {
  return problem.kind === kind;
}

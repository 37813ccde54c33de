// One way to lay out code, so that a diff shows what changed and a line fits beside a second window.
export default {
  printWidth: 110,
  singleQuote: true,
  trailingComma: 'all',
  arrowParens: 'always',
  plugins: [],
};

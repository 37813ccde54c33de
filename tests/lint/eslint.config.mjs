// Lint for the whole project, passed by flag (`eslint --config tests/lint/eslint.config.mjs`).
import tseslint from 'typescript-eslint';

const clockAndChance = [
  {
    selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
    message: 'The clock is an argument here.',
  },
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'The clock is an argument here.',
  },
  {
    selector: "MemberExpression[object.name='Math'][property.name='random']",
    message: 'Randomness is an argument here.',
  },
];
const outside = [
  'process',
  'console',
  'fetch',
  'setTimeout',
  'setInterval',
  'window',
  'document',
  'localStorage',
  'performance',
  'require',
];

export default tseslint.config(
  // Some directives are for typed.config.mjs, which alone knows whether they are needed.
  { linterOptions: { reportUnusedDisableDirectives: 'off' } },
  { ignores: ['**/node_modules/**', 'dist/**', 'out/**', 'src/**/generated/**'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrors: 'none' },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-control-regex': 'off',
      eqeqeq: 'error',
      'no-var': 'error',
      'prefer-const': 'error',
    },
  },
  {
    // What is longer hides its own story; there are no exceptions.
    files: ['src/**', '.ci/**'],
    rules: { 'max-lines-per-function': ['error', { max: 100, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: [
      'src/domain/**',
      'src/validation/**',
      'src/generators/**',
      'src/language/**',
      'src/analysis/**',
      'src/exchange/**',
    ],
    rules: {
      'no-restricted-globals': ['error', ...outside],
      'no-restricted-syntax': ['error', ...clockAndChance],
      'no-console': 'error',
    },
  },
);

import svelte from 'eslint-plugin-svelte'
import ts from 'typescript-eslint'
import { rooms } from './eslint.rooms.js'

const tests = ['**/*.test.ts', 'tests/**/*.ts']

const browser = ['window', 'document', 'navigator', 'localStorage', 'indexedDB', 'fetch', 'console', 'process']
const clockAndChance = ['Date', 'performance', 'crypto', 'setTimeout', 'setInterval', 'Intl']

const plainMistakes = [
  'no-cond-assign',
  'no-constant-binary-expression',
  'no-constant-condition',
  'no-control-regex',
  'no-debugger',
  'no-empty',
  'no-fallthrough',
  'no-irregular-whitespace',
  'no-loss-of-precision',
  'no-prototype-builtins',
  'no-self-assign',
  'no-self-compare',
  'no-sparse-arrays',
  'no-unsafe-finally',
  'no-useless-escape',
]

const unfinishedTests = ['only', 'skip', 'todo', 'fixme', 'fails', 'skipIf', 'runIf'].map((word) => ({
  selector: `CallExpression MemberExpression[property.name='${word}'][object.name=/^(it|test|describe|bench)$/]`,
  message: `a test runs or it is not there: no .${word}`,
}))

export default ts.config(
  {
    ignores: [
      'dist',
      'dist-cli',
      'node_modules',
      'test-results',
      'playwright-report',
      'tests/fixtures',
      'tests/golden',
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  ts.configs.recommended,
  svelte.configs.recommended,
  svelte.configs.prettier,
  {
    plugins: { rooms },
    rules: {
      eqeqeq: 'error',
      ...Object.fromEntries(plainMistakes.map((rule) => [rule, 'error'])),
      'no-undef': 'off', // the compiler knows better
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
    // data is held in $state.raw and replaced, never changed in place: plain maps are right
    rules: { 'svelte/prefer-svelte-reactivity': 'off' },
  },
  {
    files: ['src/**/*.ts', 'src/**/*.svelte'],
    rules: {
      'rooms/imports': 'error',
      'rooms/no-cycle': 'error',
      'rooms/file-name': 'error',
      'rooms/no-barrel': 'error',
      'max-lines': ['error', 400],
      'no-console': 'error',
    },
  },
  { files: ['src/cli/**/*.ts'], rules: { 'no-console': 'off' } },
  {
    files: ['src/core/**/*.ts'],
    ignores: tests,
    rules: {
      'no-restricted-globals': ['error', ...browser, ...clockAndChance],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'chance is an argument' }],
    },
  },
  { files: tests, rules: { 'no-restricted-syntax': ['error', ...unfinishedTests], 'max-lines': 'off' } },
)

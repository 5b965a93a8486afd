// Lint rules: type-checked and strict; the exceptions are listed with their reason.
import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

const ownRules = {
  'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
  'no-console': 'error',
  eqeqeq: 'error',
  '@typescript-eslint/no-explicit-any': 'error',
  '@typescript-eslint/no-non-null-assertion': 'error',
  '@typescript-eslint/ban-ts-comment': ['error', { 'ts-expect-error': true, 'ts-ignore': true }],
  // A `default` would turn a new case into a silent answer.
  '@typescript-eslint/switch-exhaustiveness-check': [
    'error',
    { allowDefaultCaseForExhaustiveSwitch: false, requireDefaultForNonUnion: false },
  ],
  '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
  '@typescript-eslint/consistent-type-imports': 'error',
  '@typescript-eslint/no-confusing-void-expression': [
    'error',
    { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
  ],
  // `KnownCode | string` names the known ones of an open list.
  '@typescript-eslint/no-redundant-type-constituents': 'off',
  // There are no enums here, and this rule runs out of memory on tuples of literal unions.
  '@typescript-eslint/no-unsafe-enum-assignment': 'off',
  // An unused argument named `_…` documents the signature.
  '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
};

export default defineConfig(
  {
    ignores: [
      'dist/',
      'coverage/',
      'node_modules/',
      'test/data/',
      'profiles/',
      'examples/',
      'src/web/vendor/',
    ],
  },
  js.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: ownRules,
  },
  {
    files: ['src/**/*.ts'],
    rules: { '@typescript-eslint/consistent-type-assertions': ['error', { assertionStyle: 'never' }] },
  },
  {
    // FHIR choice types are open lists here: what is not readable is set aside by the default.
    files: ['src/bundle/**/*.ts', 'src/timeline/**/*.ts'],
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    // Reading JSON text by hand means looking for control characters.
    files: ['src/http/**/*.ts'],
    rules: { 'no-control-regex': 'off' },
  },
  {
    // Tables of expected values are long.
    files: ['test/**/*.ts'],
    rules: { 'max-lines': ['error', { max: 320, skipBlankLines: true, skipComments: true }] },
  },
  {
    // Data files: long tables, one subject each.
    files: ['src/guidelines/**/*.ts', 'src/terminology/**/*.ts', 'src/messages/es-*.ts'],
    rules: { 'max-lines': 'off' },
  },
  {
    // The shells talk to people; the layers below may not.
    files: ['src/cli/**/*.ts', 'src/http/**/*.ts', 'src/replay/**/*.ts', 'test/**/*.ts'],
    rules: { 'no-console': 'off' },
  },
  {
    // These run partly inside a page.
    files: ['test/heavy/browser/*.mjs'],
    languageOptions: {
      globals: Object.fromEntries(
        [
          'document',
          'localStorage',
          'sessionStorage',
          'Event',
          'URL',
          'URLSearchParams',
          'fetch',
          'requestAnimationFrame',
        ].map((name) => [name, 'readonly']),
      ),
    },
  },
  {
    files: ['**/*.{js,mjs}'],
    languageOptions: {
      globals: {
        console: 'readonly',
        process: 'readonly',
        performance: 'readonly',
        URL: 'readonly',
        fetch: 'readonly',
        Buffer: 'readonly',
        URLSearchParams: 'readonly',
        setTimeout: 'readonly',
        clearTimeout: 'readonly',
        setInterval: 'readonly',
        clearInterval: 'readonly',
        AbortSignal: 'readonly',
        // Inside page.evaluate() of the browser checks.
        document: 'readonly',
        window: 'readonly',
        localStorage: 'readonly',
        sessionStorage: 'readonly',
        Event: 'readonly',
      },
    },
  },
);

// Writes src/guidelines/RULES.md; `npm run rules` compiles and starts it from the root of the project.
import { writeFileSync } from 'node:fs';
import { rulesPage } from './rules-page.ts';

writeFileSync('src/guidelines/RULES.md', rulesPage('.'));

// Writes the pages about the rules; `npm run rules` compiles and starts it from the root of the project.
import { writeFileSync } from 'node:fs';
import { rulePageFiles } from '../../src/presenters/rule-table.ts';
import { rulePages } from './rules-page.ts';

const pages = rulePages('.');
for (const [name, text] of Object.entries(pages))
  writeFileSync(`src/guidelines/${rulePageFiles[name as keyof typeof pages]}`, text);

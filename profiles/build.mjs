// Compiles the FSH sources offline, with the R4 definitions that an npm package carries, into built/.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const home = join(here, 'node_modules', '.cache');
const core = join(home, '.fhir', 'packages', 'hl7.fhir.r4.core#4.0.1', 'package');
const source = join(here, 'node_modules', 'hl7.fhir.r4.examples');
const built = join(here, 'built');

/** The package cache as the compiler expects it. */
function layCache() {
  if (existsSync(join(core, 'package.json'))) return;
  mkdirSync(core, { recursive: true });
  const definitions = /^(StructureDefinition|ValueSet|CodeSystem|SearchParameter|OperationDefinition)-.+\.json$/;
  for (const name of readdirSync(source)) if (definitions.test(name)) cpSync(join(source, name), join(core, name));
  const manifest = { name: 'hl7.fhir.r4.core', version: '4.0.1', fhirVersions: ['4.0.1'] };
  writeFileSync(join(core, 'package.json'), JSON.stringify(manifest));
}

function compile() {
  rmSync(join(here, 'fsh-generated'), { recursive: true, force: true });
  const sushi = join(here, 'node_modules', 'fsh-sushi', 'dist', 'app.js');
  // Any error gives an exit code other than 0, which throws here.
  execFileSync(process.execPath, [sushi, 'build', here, '--snapshot'], {
    env: { ...process.env, HOME: home, NPM_CONFIG_UPDATE_NOTIFIER: 'false' },
    stdio: 'inherit',
  });
}

function keep() {
  const resources = join(here, 'fsh-generated', 'resources');
  rmSync(built, { recursive: true, force: true });
  mkdirSync(built);
  for (const name of readdirSync(resources).sort()) {
    const resource = JSON.parse(readFileSync(join(resources, name), 'utf8'));
    writeFileSync(join(built, name), `${JSON.stringify(resource, null, 1)}\n`);
  }
  rmSync(join(here, 'fsh-generated'), { recursive: true });
}

layCache();
compile();
keep();

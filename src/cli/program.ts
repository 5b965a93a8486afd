// The command line: arguments to commands. Everything it touches (files, clock, streams) comes in as an argument.
import { Command, Option } from 'commander';
import { everyGuideline } from '../compare-guidelines.ts';
import { defaultGuidelineId, guidelineIds } from '../guidelines/registry.ts';
import { caution } from '../presenters/caution.ts';
import type { RulePageName } from '../presenters/rule-table.ts';
import { addReplay } from './replay.ts';
import { rulesText } from './rules.ts';
import { assessText, formats, type CommandResult, type Format } from './assess.ts';
import { checkFormats, checkText, type CheckOptions } from './check.ts';
import type { ServedSite } from '../http/site-folder.ts';

export interface World {
  readonly now: () => number;
  /** The text of a file; `-` is standard input. */
  readonly read: (file: string) => Promise<string>;
  /** A site folder; throws SiteError. Absent: no site can be named. */
  readonly site?: (folder: string) => ServedSite;
  /** The pages about the rules. */
  readonly rules: (name: RulePageName) => string;
  readonly finish: (result: CommandResult) => void;
  readonly serve: (
    host: string | undefined,
    port: string | undefined,
    site: string | undefined,
  ) => Promise<void>;
}

const exitCodeHelp = `
Exit codes:
  0   answered
  2   wrong command, option, guideline or time
  3   the input cannot be read
  4   answered, but a woman cannot be classified from what was sent
  5   check: answered, and something was set aside or breaks FHIR R4
  70  the program failed
  130 replay: interrupted; what was finished can be gone on with

Caution:
${caution.map((line) => `  ${line}`).join('\n')}
`;

interface SiteFlag {
  readonly site?: string;
}

interface AssessFlags extends SiteFlag {
  readonly guideline: string;
  readonly asOf?: string;
  readonly subject?: string;
  readonly riskModels?: true;
  readonly format: Format;
}

/** The program `pregnancy-htn`. */
export function createProgram(world: World): Command {
  const program = new Command('pregnancy-htn')
    .description('Hypertension in pregnancy: FHIR R4 bundles in; assessment, cards and referrals out.')
    .addHelpText('after', exitCodeHelp)
    .exitOverride();
  program
    .command('assess')
    .description('assess a Bundle, a resource, or NDJSON lines of resources')
    .argument('<file>', 'file to read; - for standard input')
    .addOption(
      new Option('--guideline <id>', 'rules to apply; all: every guideline side by side')
        .choices([...guidelineIds, everyGuideline])
        .default(defaultGuidelineId),
    )
    .option('--as-of <instant>', 'judge as at this time, ISO 8601 with zone (default: now)')
    .option('--subject <reference>', 'the woman, when the input holds several: Patient/1')
    .option(
      '--risk-models',
      'add the figures of two published risk equations; they are unverified and decide nothing',
    )
    .addOption(new Option('--format <format>', 'form of the answer').choices([...formats]).default('text'))
    .addHelpText('after', exitCodeHelp)
    .option('--site <folder>', 'folder with site.json and ConceptMaps')
    .action(async (file: string, flags: AssessFlags, command: Command) => {
      const { guideline, ...others } = flags;
      const said = command.getOptionValueSource('guideline') === 'default' ? {} : { guideline };
      const site = siteOf(world, flags);
      world.finish(assessText(await world.read(file), { ...others, ...said, site }, world.now()));
    });
  addCheck(program, world);
  program
    .command('guidelines')
    .description('list the guidelines known')
    .action(() => {
      const lines = guidelineIds.map((id) => (id === defaultGuidelineId ? `${id} (default)` : id));
      world.finish({ exitCode: 0, output: `${lines.join('\n')}\n`, errors: '' });
    });
  program
    .command('rules')
    .description('print the rules in words, for clinical review; or one of them')
    .argument(
      '[id]',
      'a rule, step or limit by the name that answers give it: pre-eclampsia, urgency:seizure; or: numbers, cases',
    )
    .action((id: string | undefined) => {
      world.finish(rulesText(world.rules, id));
    });
  program
    .command('serve')
    .description('start the web service')
    .option('--host <host>', 'address to listen on (default: HOST or 127.0.0.1)')
    .option('--port <port>', 'port to listen on (default: PORT or 8080)')
    .option('--site <folder>', 'folder with site.json and ConceptMaps (default: SITE)')
    .action((flags: SiteFlag & { readonly host?: string; readonly port?: string }) =>
      world.serve(flags.host, flags.port, flags.site),
    );
  addReplay(program, world.finish);
  return program;
}

function siteOf(world: World, { site }: SiteFlag): ServedSite | undefined {
  return site === undefined ? undefined : world.site?.(site);
}

function addCheck(program: Command, world: World): void {
  program
    .command('check')
    .description('would these data work? what is found, set aside, never answered; what breaks FHIR R4')
    .argument('<input>', 'file or http(s) address to read; - for standard input')
    .addOption(new Option('--guideline <id>', 'rules to check for').choices([...guidelineIds]))
    .option('--as-of <instant>', 'judge as at this time, ISO 8601 with zone (default: now)')
    .option('--subject <reference>', 'one woman only: Patient/1')
    .option('--site <folder>', 'folder with site.json and ConceptMaps')
    .addOption(
      new Option('--format <format>', 'form of the answer').choices([...checkFormats]).default('text'),
    )
    .addHelpText('after', exitCodeHelp)
    .action(async (input: string, { site, ...flags }: CheckOptions & SiteFlag) => {
      const served = siteOf(world, site === undefined ? {} : { site });
      world.finish(checkText(await world.read(input), flags, { now: world.now(), site: served }));
    });
}

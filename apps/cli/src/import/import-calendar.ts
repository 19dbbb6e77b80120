import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { findResource, importResourceCalendar, type FoundResource } from '@archwright/casework';
import { toLocal } from '@archwright/calendar';
import { importCalendar, type ImportedCalendar } from '@archwright/contracts';
import { readArguments, UsageError } from '../arguments.js';
import { fetchFeed } from './fetch-feed.js';
import { readInput } from './files.js';
import { inPractice } from './open-practice.js';

export const CALENDAR_USAGE =
  'npm run --silent cli -- import calendar FILE|URL --resource NAME [--clinic NAME] [--source NAME] [--from DATE] ' +
  '[--until DATE] [--dry-run] [--allow-private] [--organisation NAME] [--data FOLDER]';
const HELP = `Usage: ${CALENDAR_USAGE}
Turns an iCalendar feed (RFC 5545) into busy times of a chair, person or kit. Of each event only its times are kept.
--resource       label, code or id; --clinic where the name stands for several
--source         names the feed: a later import of the same name replaces this one. When left out, the name of the
                 file, or the server's name with a digest of the address; give it when the address may change
--from, --until  local dates; when left out, from yesterday to 400 days ahead
--dry-run        writes nothing and tells what would happen
--allow-private  the address may lie inside a private network
`;
const MOST_BYTES = 10_000_000;
const A_DATE = /^\d{4}-\d\d-\d\d$/;

/** Reads a calendar of a chair, person or kit from a file or an address. */
export async function importCalendarCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, CALENDAR_USAGE, {
    resource: { type: 'string' },
    clinic: { type: 'string' },
    source: { type: 'string' },
    from: { type: 'string' },
    until: { type: 'string' },
    'dry-run': { type: 'boolean', default: false },
    'allow-private': { type: 'boolean', default: false },
    organisation: { type: 'string' },
    data: { type: 'string', default: '.data' },
    help: { type: 'boolean', default: false },
  });
  if (values.help) {
    process.stdout.write(HELP);
    return 0;
  }
  const [from, surplus] = positionals;
  if (from === undefined || surplus !== undefined)
    throw new UsageError('Give one file or address of a calendar.', CALENDAR_USAGE);
  if (values.resource === undefined) throw new UsageError('Say whose calendar it is with --resource.', CALENDAR_USAGE);
  const period = { fromOn: dateIn('--from', values.from), untilOn: dateIn('--until', values.until) };
  const named = { name: values.resource, clinic: values.clinic };
  const feed = await readFeed(from, values['allow-private']);
  const body = { source: importCalendar.shape.source.parse(values.source ?? feed.source), calendar: feed.calendar };

  return inPractice(values, async ({ actor, now, attempt }) => {
    const { resource, imported } = await attempt(
      async (tx) => {
        const resource = await findResource(tx, actor, named);
        return { resource, imported: await importResourceCalendar(tx, actor, resource.id, body, now, period) };
      },
      () => !values['dry-run'],
    );
    process.stdout.write(answerOf(resource, imported, values['dry-run']));
    return imported.problems.length === 0 ? 0 : 1;
  });
}

function dateIn(option: string, text: string | undefined): string | undefined {
  if (text === undefined || (A_DATE.test(text) && !Number.isNaN(Date.parse(text)))) return text;
  throw new UsageError(`${option} "${text}" is no date; give one such as 2027-01-28.`, CALENDAR_USAGE);
}

/** The text of a calendar, and what the feed is called unless the caller says otherwise. */
async function readFeed(from: string, isPrivateAllowed: boolean): Promise<{ calendar: string; source: string }> {
  if (!/^[a-z]+:\/\//i.test(from)) {
    const calendar = readInput(from, MOST_BYTES, CALENDAR_USAGE).toString('utf8');
    return { calendar, source: basename(from) };
  }
  if (!URL.canParse(from)) throw new UsageError('The address of the feed can not be read.', CALENDAR_USAGE);
  const url = new URL(from);
  process.stderr.write('Fetching the feed ...\n');
  const calendar = await fetchFeed(url, { isPrivateAllowed });
  // The address is often the key to the calendar, so it is not kept.
  const digest = createHash('sha256').update(url.href).digest('hex').slice(0, 12);
  return { calendar, source: `${url.host} ${digest}` };
}

function answerOf({ label, clinic, zone }: FoundResource, imported: ImportedCalendar, isDryRun: boolean): string {
  const { busy, unchanged, gone, conflicts, disturbances, booked, problems } = imported;
  const local = (instant: string) => toLocal(Date.parse(instant), zone).replace('T', ' ').slice(0, 16);
  return [
    `${label} of the clinic ${clinic}${isDryRun ? ': tried only, nothing was written' : ''}`,
    `busy times ${String(busy)}: new ${String(busy - unchanged)}, as before ${String(unchanged)}; gone ${String(gone)}`,
    ...(conflicts > 0
      ? [`${String(conflicts)} busy times fall on booked time, which stays until somebody decides:`]
      : []),
    ...(disturbances > 0
      ? [`For ${String(disturbances)} of them, new, repairs are looked for: see what falls away.`]
      : []),
    ...booked.map(({ startsAt, endsAt }) => `  ${local(startsAt)} to ${local(endsAt)} (${zone})`),
    ...problems.map(({ line, component, problem }) => `line ${String(line)}: ${component} left out: ${problem}`),
    '',
  ].join('\n');
}

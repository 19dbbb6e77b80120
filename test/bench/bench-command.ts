import { UsageError } from '../../apps/cli/src/arguments.js';
import { machine } from './figures.js';

const USAGE =
  'npm run bench:offers, bench:http, bench:checks, bench:web [-- --loads N], bench:screening, bench:tracing, bench:replan, bench:workload, bench:planner [-- --data FOLDER]';

/** Measures and prints a table with the machine it was taken on; standard output holds nothing else. */
export async function benchCommand([what = '', ...rest]: readonly string[]): Promise<number> {
  if (rest.length > 0 && what !== 'planner' && what !== 'web')
    throw new UsageError(`"${rest.join(' ')}" is not understood.`, USAGE);
  if (what === 'bare') {
    const { serveBare } = await import('./bare-service.js');
    await serveBare();
    return 0;
  }
  const bench = await benchOf(what);
  const before = machine();
  const figures = await bench(rest);
  process.stdout.write(`${figures}\n\nBefore: ${before}\nAfter:  ${machine()}\n`);
  return 0;
}

async function benchOf(what: string): Promise<(args: readonly string[]) => Promise<string>> {
  if (what === 'offers') return (await import('./bench-offers.js')).benchOffers;
  if (what === 'replan') return (await import('./bench-replan.js')).benchReplan;
  if (what === 'tracing') return (await import('./bench-tracing.js')).benchTracing;
  if (what === 'web') return (await import('./bench-web.js')).benchWeb;
  if (what === 'http') return (await import('./bench-http.js')).benchHttp;
  if (what === 'checks') return (await import('./bench-checks.js')).benchChecks;
  if (what === 'screening') return (await import('./bench-screening.js')).benchScreening;
  if (what === 'planner') return (await import('./bench-planner.js')).benchPlanner;
  if (what === 'workload') return (await import('./bench-workload.js')).benchWorkload;
  throw new UsageError(`There is no bench "${what}".`, USAGE);
}

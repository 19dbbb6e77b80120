import { explainMeasurement, JUDGEMENT_NOTE, MILESTONE_KINDS, type Explanation } from '@archwright/measures';
import { readArguments, UsageError } from '../arguments.js';

const USAGE = `cli measure CODE VALUE… [--unit UNIT] [--arch upper|lower] [--side right|left] [--region REGION] [--milestone VISIT] [--sex female|male] [--method key=answer]… [--json]
CODE is a measurement of the catalogue or its short form, such as OVD; several values are repeated readings.
A computed value takes its two parts, such as: cli measure IRD 68 65 (rest, occlusal).`;

const KEYS = `Keys of the answer (--json):
  code, name  of the measurement
  values      as taken
  summary     median, spread, count and method of the readings; null for an answer or a computed value
  assumed     what was not stated and taken for granted, such as "arch upper"
  verdicts    each with verdict (pass, caution, fail), blocks, reason, measurement, value, unit, limit, source and its
              standing, rule, ruleVersion, cautionText and action: what to do now
  note        what no verdict replaces`;

function choice<const Choice extends string>(
  name: string,
  given: string | undefined,
  choices: readonly Choice[],
): Choice | undefined {
  if (given === undefined) return undefined;
  const found = choices.find((option) => option === given);
  if (found === undefined)
    throw new UsageError(`--${name} "${given}" is not accepted. Accepted: ${choices.join(', ')}.`, USAGE);
  return found;
}

function methodOf(pairs: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    pairs.map((pair) => {
      const at = pair.indexOf('=');
      if (at < 1) throw new UsageError(`--method "${pair}" is not accepted. Accepted: key=answer.`, USAGE);
      return [pair.slice(0, at), pair.slice(at + 1)];
    }),
  );
}

const report = ({ measurement, values, summary, verdicts, assumed }: Explanation) => ({
  code: measurement.code,
  name: measurement.name,
  values,
  summary,
  assumed,
  verdicts,
  note: JUDGEMENT_NOTE,
});

function lines({ measurement, values, summary, verdicts, assumed }: Explanation): string[] {
  return [
    `${measurement.name} (${measurement.code}): ${values.map(String).join(', ')}`,
    ...(summary === null || values.length < 2
      ? []
      : [`median ${String(summary.median)}, spread ${String(summary.spread)}, of ${String(values.length)} readings`]),
    ...(assumed.length > 0 ? [`assumed: ${assumed.join(', ')}`] : []),
    ...verdicts.map(
      ({ verdict, reason, limit, source, action }) =>
        `${verdict}: ${reason} Limit: ${limit}. Source: ${source}. What to do: ${action.replaceAll('-', ' ')}.`,
    ),
    ...(verdicts.length === 0 ? ['no rule judges this value by itself'] : []),
    JUDGEMENT_NOTE,
  ];
}

/** Explains the verdict on a value without keeping anything. */
export function measureCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, {
    unit: { type: 'string' },
    arch: { type: 'string' },
    side: { type: 'string' },
    region: { type: 'string' },
    milestone: { type: 'string' },
    sex: { type: 'string' },
    method: { type: 'string', multiple: true },
    json: { type: 'boolean' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(`Usage: ${USAGE}\n${KEYS}\n`);
    return Promise.resolve(0);
  }
  const [code, ...texts] = positionals;
  if (code === undefined || texts.length === 0) throw new UsageError('Give a code and at least one value.', USAGE);
  const arch = choice('arch', values.arch, ['upper', 'lower']);
  const side = choice('side', values.side, ['right', 'left']);
  const sex = choice('sex', values.sex, ['female', 'male']);
  const milestone = choice('milestone', values.milestone, MILESTONE_KINDS);
  const explanation = explainMeasurement(code, texts, {
    ...(values.unit === undefined ? {} : { unit: values.unit }),
    ...(arch === undefined ? {} : { arch }),
    ...(side === undefined ? {} : { side }),
    ...(values.region === undefined ? {} : { region: values.region }),
    ...(milestone === undefined ? {} : { milestone }),
    ...(sex === undefined ? {} : { sex }),
    ...(values.method === undefined ? {} : { method: methodOf(values.method) }),
  });
  process.stdout.write(
    values.json === true ? `${JSON.stringify(report(explanation), null, 2)}\n` : `${lines(explanation).join('\n')}\n`,
  );
  return Promise.resolve(0);
}

import type { RecordCapture, StageView } from '@archwright/contracts';

type Device = StageView['devices'][number];
export type Measures = Device['measures'];
/** Ids of devices by what they measure; empty where nothing is stated. */
export type ChosenDevices = Readonly<Partial<Record<Measures, string>>>;

const KINDS: readonly Measures[] = ['lengths', 'angles', 'tracings'];

export const kindsOf = (devices: readonly Device[]): Measures[] =>
  KINDS.filter((kind) => devices.some(({ measures }) => measures === kind));

/** What was chosen now, else what was last used at this chair. */
export function chosenDevices({ devices }: Pick<StageView, 'devices'>, typed: ChosenDevices): ChosenDevices {
  const last = devices.filter(({ isLastUsed }) => isLastUsed).map(({ measures, id }) => [measures, id] as const);
  return { ...Object.fromEntries(last), ...typed };
}

/** A capture with the devices that it was taken with: of the chosen ones only those whose readings are in it. */
export function withDevices(
  { fields }: { readonly fields: readonly Pick<StageView['fields'][number], 'code' | 'kind' | 'unit'>[] },
  body: RecordCapture,
  chosen: ChosenDevices,
): RecordCapture {
  const { readings, tracings } = body;
  const units = new Set(
    readings.flatMap(({ code }) => {
      const field = fields.find((each) => each.code === code);
      return field?.kind === 'number' ? [field.unit] : [];
    }),
  );
  const taken: Record<Measures, boolean> = {
    lengths: units.has('mm'),
    angles: units.has('deg'),
    tracings: tracings.length > 0,
  };
  const deviceIds = KINDS.flatMap((kind) => (taken[kind] && chosen[kind] ? [chosen[kind]] : []));
  return deviceIds.length === 0 ? body : { ...body, deviceIds };
}

import type { StageView } from '@archwright/contracts';
import { measurementByCode } from '@archwright/measures';
import type { FieldProblem } from '@archwright/platform';
import { Capture, Device, type Appointment } from '@archwright/records';
import { In, IsNull, Raw, type EntityManager } from 'typeorm';

type Measures = Device['measures'];

/** What a value is taken with; null for grades, answers and counts, which need no device. */
export function measuredWith(code: string): Measures | null {
  const measurement = measurementByCode(code);
  if (measurement.group === 'tracing') return 'tracings';
  if (measurement.kind !== 'number') return null;
  return measurement.unit === 'mm' ? 'lengths' : measurement.unit === 'deg' ? 'angles' : null;
}

/** What is in use at the clinic to measure with, and what was last chosen at the chair of the visit. */
export async function viewDevices(
  tx: EntityManager,
  clinicId: string,
  visit: Appointment | null,
): Promise<StageView['devices']> {
  const devices = await tx.find(Device, {
    where: { clinicId, retiredAt: IsNull() },
    order: { name: 'ASC', id: 'ASC' },
  });
  const last = devices.length === 0 ? [] : await lastChosenAt(tx, visit?.chairId ?? null);
  return devices.map(({ id, name, measures }) => ({ id, name, measures, isLastUsed: last.includes(id) }));
}

async function lastChosenAt(tx: EntityManager, chairId: string | null): Promise<readonly string[]> {
  if (chairId === null) return [];
  const capture = await tx.findOne(Capture, {
    where: { chairId, deviceIds: Raw((column) => `${column} <> '{}'`) },
    order: { recordedAt: 'DESC', id: 'DESC' },
  });
  return capture?.deviceIds ?? [];
}

/** What is wrong with the devices that a capture names: not in use at the clinic, or two for the same. */
export async function deviceProblems(
  tx: EntityManager,
  clinicId: string,
  deviceIds: readonly string[],
): Promise<FieldProblem[]> {
  const found = await tx.findBy(Device, { id: In([...deviceIds]), clinicId, retiredAt: IsNull() });
  const taken = new Set<Measures>();
  return deviceIds.flatMap((id, index): FieldProblem[] => {
    const path = `deviceIds.${String(index)}`;
    const device = found.find((each) => each.id === id);
    if (device === undefined) return [{ path, problem: 'This is no device in use at the clinic of the visit.' }];
    if (taken.has(device.measures))
      return [{ path, problem: `Two devices for ${device.measures}: one capture, one device.` }];
    taken.add(device.measures);
    return [];
  });
}

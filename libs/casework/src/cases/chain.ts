import {
  combineArches,
  treatmentPath,
  withHealing,
  type Arch,
  type CaseChain,
  type CaseProgress,
  type TreatmentPath,
} from '@archwright/protocol';
import { CaseArch, LabStep, Stage, TreatmentPathVersion } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { RecordNotFoundError } from '../errors.js';

/** A case as the protocol sees it, with the rows that it was read from. */
export interface LoadedChain {
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  readonly rows: { readonly arches: readonly CaseArch[]; readonly stages: readonly Stage[]; readonly steps: LabStep[] };
}

/** Rounds of one part that count against each other: stage and lab step rows have these in common. */
interface Round {
  readonly code: string;
  readonly round: number;
  readonly arches: readonly Arch[];
}

type PinnedPath = Pick<CaseArch, 'arch' | 'pathVersionId'>;

const HEALING_CODE = /^H(\d+)(-|$)/;

/**
 * The chain of a case from the path versions that it pinned, with rounds of healing where stages of them exist, and how
 * far it has come.
 *
 * @throws {RecordNotFoundError} when the case follows no path
 */
export async function loadChain(tx: EntityManager, caseId: string): Promise<LoadedChain> {
  const loaded = (await loadChains(tx, [caseId])).get(caseId);
  if (loaded === undefined) throw new RecordNotFoundError('case', caseId);
  return loaded;
}

/** Like {@link loadChain} for many cases in as many queries as for one; a case that follows no path is left out. */
export async function loadChains(tx: EntityManager, caseIds: readonly string[]): Promise<Map<string, LoadedChain>> {
  const where = { caseId: In([...new Set(caseIds)]) };
  const arches = await tx.find(CaseArch, { where, order: { arch: 'DESC' } });
  const stages = await tx.find(Stage, { where, order: { position: 'ASC', round: 'ASC' } });
  const steps = await tx.find(LabStep, { where, order: { round: 'ASC', id: 'ASC' } });
  const versionIds = arches.map(({ pathVersionId }) => pathVersionId);
  const chainFor = sharedChains(await loadPaths(tx, versionIds));
  const of = <Row extends { caseId: string }>(rows: readonly Row[], caseId: string) =>
    rows.filter((row) => row.caseId === caseId);
  return new Map(
    [...new Set(arches.map(({ caseId }) => caseId))].map((caseId) => {
      const rows = { arches: of(arches, caseId), stages: of(stages, caseId), steps: of(steps, caseId) };
      const chain = chainFor(rows.arches, rows.stages);
      return [caseId, { chain, progress: progressOf(rows.stages, rows.steps), rows }];
    }),
  );
}

/** The chain of pinned paths. Stages of healing that the case already has stand in it too. */
export function chainOf(
  arches: readonly PinnedPath[],
  paths: ReadonlyMap<string, TreatmentPath>,
  stages: readonly Round[],
): CaseChain {
  const given: { upper?: TreatmentPath; lower?: TreatmentPath } = {};
  for (const { arch, pathVersionId } of arches) {
    given[arch] = withHealing(pathOf(paths, pathVersionId), healingRounds(stages, arch));
  }
  return combineArches(given);
}

/** Like {@link chainOf} for many cases: those on the same paths with the same healing share one chain. */
export function sharedChains(
  paths: ReadonlyMap<string, TreatmentPath>,
): (arches: readonly PinnedPath[], stages: readonly Round[]) => CaseChain {
  const known = new Map<string, CaseChain>();
  return (arches, stages) => {
    const key = JSON.stringify(
      arches.map(({ arch, pathVersionId }) => [arch, pathVersionId, healingRounds(stages, arch)]),
    );
    const chain = known.get(key) ?? chainOf(arches, paths, stages);
    known.set(key, chain);
    return chain;
  };
}

/** Published paths by the id of their version. Their documents were checked when they were published. */
export async function loadPaths(tx: EntityManager, versionIds: readonly string[]): Promise<Map<string, TreatmentPath>> {
  const versions = await tx.findBy(TreatmentPathVersion, { id: In([...new Set(versionIds)]) });
  return new Map(versions.map(({ id, document }) => [id, treatmentPath.parse(document)]));
}

/** @throws {RecordNotFoundError} for a version that the organisation has not published */
function pathOf(paths: ReadonlyMap<string, TreatmentPath>, versionId: string): TreatmentPath {
  const path = paths.get(versionId);
  if (path === undefined) throw new RecordNotFoundError('treatment path version', versionId);
  return path;
}

/**
 * What the rows say about the way through the chain. A go no longer counts for the arches that a later go of the same
 * part was made for, nor at all once it is repeated or discarded.
 */
export function progressOf(
  stages: readonly (Round & Pick<Stage, 'state'>)[],
  steps: readonly (Round & Pick<LabStep, 'state'>)[],
): CaseProgress {
  return {
    stages: stages.map((row) => ({
      code: row.code,
      round: row.round,
      arches: row.arches,
      state: row.state,
      voided: row.state === 'repeated' ? row.arches : overtaken(row, stages),
    })),
    steps: steps.map((row) => ({
      code: row.code,
      round: row.round,
      arches: row.arches,
      state: row.state,
      voided: row.state === 'discarded' ? row.arches : overtaken(row, steps),
    })),
  };
}

function overtaken(row: Round, all: readonly Round[]): Arch[] {
  const later = all.filter((each) => each.code === row.code && each.round > row.round);
  return row.arches.filter((arch) => later.some((each) => each.arches.includes(arch)));
}

function healingRounds(stages: readonly Round[], arch: Arch): number {
  const own = stages.filter((stage) => stage.arches.includes(arch));
  return Math.max(0, ...own.map(({ code }) => Number(HEALING_CODE.exec(code)?.[1] ?? 0)));
}

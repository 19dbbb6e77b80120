import type { WorkOutlook } from '@archwright/protocol';
import { Laboratory, WorkCentre } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { LoadedWorkload } from './load-workload.js';

/** What the parts of a plan are called. No patient is: cases have numbers. */
export interface Names {
  caseNumber(caseId: string): string;
  workCentre(id: string): string;
  laboratory(id: string): string;
  step(caseId: string, code: string): string;
  /** The visit that a stretch of work is for. */
  stageBefore(work: Pick<WorkOutlook, 'caseId' | 'phase'>): string;
}

export async function loadNames(tx: EntityManager, { cases, request }: LoadedWorkload): Promise<Names> {
  const centres = new Map((await tx.find(WorkCentre)).map(({ id, name }) => [id, name]));
  const laboratories = new Map((await tx.find(Laboratory)).map(({ id, name }) => [id, name]));
  const chainOf = (caseId: string) => request.cases.find((work) => work.caseId === caseId)?.chain;
  return {
    caseNumber: (caseId) => cases.find(({ id }) => id === caseId)?.number ?? '',
    workCentre: (id) => centres.get(id) ?? '',
    laboratory: (id) => laboratories.get(id) ?? '',
    step: (caseId, code) => chainOf(caseId)?.steps.find((step) => step.code === code)?.title ?? code,
    stageBefore({ caseId, phase: code }) {
      const chain = chainOf(caseId);
      const phase = chain?.phases.find((each) => each.code === code);
      return chain?.stages.find((stage) => stage.code === phase?.beforeStage)?.title ?? code;
    },
  };
}

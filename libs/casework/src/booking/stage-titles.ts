import { CaseArch, Stage } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import { chainOf, loadPaths } from '../cases/chain.js';

/** Titles of stages by case and code. */
export async function stageTitles(
  tx: EntityManager,
  caseIds: readonly string[],
): Promise<Map<string, ReadonlyMap<string, string>>> {
  const arches = await tx.findBy(CaseArch, { caseId: In([...caseIds]) });
  const stages = await tx.findBy(Stage, { caseId: In([...caseIds]) });
  const paths = await loadPaths(
    tx,
    arches.map(({ pathVersionId }) => pathVersionId),
  );
  return new Map(
    caseIds.map((id) => {
      const ofCase = <Row extends { readonly caseId: string }>(rows: readonly Row[]) =>
        rows.filter(({ caseId }) => caseId === id);
      const chain = chainOf(ofCase(arches), paths, ofCase(stages));
      return [id, new Map(chain.stages.map(({ code, title }) => [code, title]))];
    }),
  );
}

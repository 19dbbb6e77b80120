import type { Arch, CaseChain, CaseProgress } from '@archwright/protocol';

/** Arches whose denture is placed and stays so. */
export function placedArches(chain: CaseChain, progress: CaseProgress): Arch[] {
  const deliveries = new Set(chain.stages.filter(({ isDelivery }) => isDelivery).map(({ code }) => code));
  return chain.paths
    .map(({ arch }) => arch)
    .filter((arch) =>
      progress.stages.some(
        (row) =>
          deliveries.has(row.code) && row.state === 'passed' && row.arches.includes(arch) && !row.voided.includes(arch),
      ),
    );
}

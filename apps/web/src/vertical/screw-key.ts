/** Where a draft of a set's screw is kept. */
export const screwKey = (stageId: string, label: string): string => `screw.${stageId}.${label}`;

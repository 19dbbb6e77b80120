/** Where a draft of the choice of teeth is kept. */
export const teethKey = (stageId: string): string => `teeth.${stageId}`;

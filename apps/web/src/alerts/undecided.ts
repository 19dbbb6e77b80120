/** Whether an alert waits for a person: the state tells, whatever the words for it. */
export const isUndecided = ({ state }: { state: string }): boolean => state === 'open' || state === 'planned';

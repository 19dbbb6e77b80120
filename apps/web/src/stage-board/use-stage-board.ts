import { stageBoard, type SessionView, type StageBoard } from '@archwright/contracts';
import { queryOptions, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

export const EVERYONE = 'everyone';

/** Whose visits are shown: who is asked for in the address, else the person's own, else everybody's. */
export const chosenClinician = (asked: string | undefined, { practitionerId }: SessionView): string =>
  asked ?? practitionerId ?? EVERYONE;

/** The day's stages, of one clinic or clinician or of all. */
export const boardQuery = (day: string, clinicId: string | undefined, clinician: string) =>
  queryOptions({
    queryKey: ['board', day, clinicId, clinician],
    queryFn: (): Promise<StageBoard> =>
      read('/stage-board', stageBoard, {
        on: day,
        clinicId,
        clinicianId: clinician === EVERYONE ? undefined : clinician,
      }),
  });

/** The day's stages, with what waits for a decision whatever its day. */
export function useStageBoard(on: string | undefined, clinicId: string | undefined, clinician: string) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const day = on ?? practice.today;
  const board = useQuery({ ...boardQuery(day, clinicId, clinician), refetchInterval: 20_000 });
  return { practice, day, board };
}

import { stageBoard, type StageBoard } from '@archwright/contracts';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';

/** The day's stages, with what waits for a decision whatever its day. */
export function useStageBoard(on: string | undefined, clinicId: string | undefined, clinicianId: string | undefined) {
  const practice = useSuspenseQuery(practiceQuery).data;
  const day = on ?? practice.today;
  const board = useQuery({
    queryKey: ['board', day, clinicId, clinicianId],
    queryFn: (): Promise<StageBoard> => read('/stage-board', stageBoard, { on: day, clinicId, clinicianId }),
    refetchInterval: 20_000,
  });
  return { practice, day, board };
}

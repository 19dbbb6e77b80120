import {
  appointmentView,
  remakeAlertView,
  stageView,
  type CompleteStage,
  type OpenRemakeAlert,
  type OverrideGate,
  type RecordCapture,
  type SignPrescription,
  type StageView,
  type StateBearingScrew,
  type VisitAction,
} from '@archwright/contracts';
import { queryOptions, useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { isOutrun } from '../look/outrun.js';

const ASK_AGAIN_MS = 700;

export const stageQuery = (stageId: string) =>
  queryOptions({
    queryKey: ['stage', stageId],
    queryFn: (): Promise<StageView> => read(`/stages/${stageId}`, stageView),
  });

interface Send<Body> {
  body: Body;
  onSaved: (saved: StageView) => void;
}

/** One stage, asked again until its saved capture has been checked, and all that can be done with it. */
export function useStage(stageId: string) {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const key = stageQuery(stageId).queryKey;
  const stage = useQuery({
    ...stageQuery(stageId),
    refetchInterval: (query) => (query.state.data?.checking ? ASK_AGAIN_MS : 30_000),
    placeholderData: undefined,
  });
  const keep = {
    onSuccess: (saved: StageView): void => {
      client.setQueryData(key, saved);
    },
    // Somebody else was faster: the newest state comes in beside what is typed.
    onError: (error: Error) => (isOutrun(error) ? client.invalidateQueries({ queryKey: key }) : undefined),
  };
  const settle = {
    ...keep,
    // Also when this screen was left meanwhile: what is saved must not wait there to be saved again.
    onSuccess: (saved: StageView, { onSaved }: Send<unknown>): void => {
      keep.onSuccess(saved);
      onSaved(saved);
    },
  };
  const version = stage.data?.version;
  const capture = useMutation({
    mutationFn: ({ body }: Send<RecordCapture>) => post(`/stages/${stageId}/captures`, stageView, body, version),
    ...settle,
  });
  const override = useMutation({
    mutationFn: (body: OverrideGate) => post(`/stages/${stageId}/overrides`, stageView, body, version),
    ...keep,
  });
  const screw = useMutation({
    mutationFn: ({ body }: Send<StateBearingScrew>) =>
      put(`/stages/${stageId}/bearing-screw`, stageView, body, version ?? 0),
    ...settle,
  });
  const complete = useMutation({
    mutationFn: (body: CompleteStage) => post(`/stages/${stageId}/completion`, stageView, body, version),
    ...keep,
  });
  const prescribe = useMutation({
    mutationFn: (body: SignPrescription) => post(`/stages/${stageId}/prescription`, stageView, body, version),
    ...keep,
  });
  const visit = stage.data?.visit;
  const act = useMutation({
    mutationFn: (body: VisitAction) =>
      post(`/appointments/${visit?.id ?? ''}/actions`, appointmentView, body, visit?.version),
    onSettled: () => client.invalidateQueries({ queryKey: key }),
  });
  const raise = useMutation({ mutationFn: (body: OpenRemakeAlert) => post('/remake-alerts', remakeAlertView, body) });
  return { practice, stage, capture, screw, override, complete, prescribe, act, raise };
}

import { disturbanceView, type DisturbanceView, type EnterDisturbance } from '@archwright/contracts';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { post } from '../api/client.js';

/** Enters what falls away and goes to whom it falls on. */
export function useEnter() {
  const client = useQueryClient();
  const navigate = useNavigate();
  return useMutation({
    mutationFn: (body: EnterDisturbance) => post('/disturbances', disturbanceView, body),
    onSuccess: async (entered: DisturbanceView) => {
      client.setQueryData(['disturbance', entered.id], entered);
      await client.invalidateQueries({ queryKey: ['disturbances'] });
      await navigate({ to: '/desk/falls-away/$disturbanceId', params: { disturbanceId: entered.id } });
    },
  });
}

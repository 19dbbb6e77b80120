import { Param, ParseUUIDPipe } from '@nestjs/common';
import { RecordNotFoundError } from '@archwright/casework';

/** Controller parameter: the id in the address. What is no id names nothing, so it is answered like an unknown one. */
export const IdParam = (kind: string): ParameterDecorator =>
  Param('id', new ParseUUIDPipe({ exceptionFactory: () => new RecordNotFoundError(kind, 'of this id') }));

import { SetMetadata } from '@nestjs/common';

/** Metadata that the session guard looks for. */
export const PUBLIC = 'public';

/** Callable without a session. */
export const Public = () => SetMetadata(PUBLIC, true);

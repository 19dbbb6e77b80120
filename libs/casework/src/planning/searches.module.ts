import { Inject, Module, type OnModuleDestroy } from '@nestjs/common';
import { Searches } from './searches.js';

/** The one pool of search threads of a process. */
@Module({ providers: [{ provide: Searches, useFactory: () => new Searches() }], exports: [Searches] })
export class SearchesModule implements OnModuleDestroy {
  constructor(@Inject(Searches) private readonly searches: Searches) {}

  /** First of all on the way down: a job that searches fails at once and is done again later, instead of holding up the end. */
  onModuleDestroy(): Promise<void> {
    return this.searches.close();
  }
}

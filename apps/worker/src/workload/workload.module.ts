import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { WorkloadProcessor } from './workload.processor.js';

@Module({ imports: [SearchesModule], providers: [WorkloadProcessor] })
export class WorkloadModule {}

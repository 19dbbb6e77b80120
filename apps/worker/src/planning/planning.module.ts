import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { PlanningProcessor } from './planning.processor.js';

@Module({ imports: [SearchesModule], providers: [PlanningProcessor] })
export class PlanningModule {}

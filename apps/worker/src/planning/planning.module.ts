import { Module } from '@nestjs/common';
import { PlanningProcessor } from './planning.processor.js';

@Module({ providers: [PlanningProcessor] })
export class PlanningModule {}

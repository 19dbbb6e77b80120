import { Module } from '@nestjs/common';
import { VisitProposalsController } from './visit-proposals.controller.js';
import { WorkloadController } from './workload.controller.js';

@Module({ controllers: [WorkloadController, VisitProposalsController] })
export class WorkloadModule {}

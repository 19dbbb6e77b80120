import { Module } from '@nestjs/common';
import { WorkloadController } from './workload.controller.js';

@Module({ controllers: [WorkloadController] })
export class WorkloadModule {}

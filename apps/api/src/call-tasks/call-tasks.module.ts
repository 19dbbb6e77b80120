import { Module } from '@nestjs/common';
import { CallTasksController } from './call-tasks.controller.js';

@Module({ controllers: [CallTasksController] })
export class CallTasksModule {}

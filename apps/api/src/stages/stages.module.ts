import { Module } from '@nestjs/common';
import { StagesController } from './stages.controller.js';
import { TracingsController } from './tracings.controller.js';

@Module({ controllers: [StagesController, TracingsController] })
export class StagesModule {}

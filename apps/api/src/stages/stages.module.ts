import { Module } from '@nestjs/common';
import { StagesController } from './stages.controller.js';
import { ToothChoicesController } from './tooth-choices.controller.js';
import { TracingsController } from './tracings.controller.js';

@Module({ controllers: [StagesController, ToothChoicesController, TracingsController] })
export class StagesModule {}

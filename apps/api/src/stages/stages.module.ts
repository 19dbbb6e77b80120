import { Module } from '@nestjs/common';
import { PhotographsController } from './photographs.controller.js';
import { StagesController } from './stages.controller.js';
import { ToothChoicesController } from './tooth-choices.controller.js';
import { TracingsController } from './tracings.controller.js';

@Module({ controllers: [StagesController, PhotographsController, ToothChoicesController, TracingsController] })
export class StagesModule {}

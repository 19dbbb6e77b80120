import { Module } from '@nestjs/common';
import { CaseAftercareController } from './case-aftercare.controller.js';
import { RecallsController } from './recalls.controller.js';
import { SoreSpotsController } from './sore-spots.controller.js';

@Module({ controllers: [CaseAftercareController, RecallsController, SoreSpotsController] })
export class AftercareModule {}

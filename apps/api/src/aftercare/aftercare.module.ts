import { Module } from '@nestjs/common';
import { CaseAftercareController } from './case-aftercare.controller.js';
import { SoreSpotsController } from './sore-spots.controller.js';

@Module({ controllers: [CaseAftercareController, SoreSpotsController] })
export class AftercareModule {}

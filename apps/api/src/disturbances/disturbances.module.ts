import { Module } from '@nestjs/common';
import { DisturbancesController } from './disturbances.controller.js';

@Module({ controllers: [DisturbancesController] })
export class DisturbancesModule {}

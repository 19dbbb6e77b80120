import { Module } from '@nestjs/common';
import { CautionsController } from './cautions.controller.js';

@Module({ controllers: [CautionsController] })
export class CautionsModule {}

import { Module } from '@nestjs/common';
import { CheckFiguresController } from './check-figures.controller.js';

@Module({ controllers: [CheckFiguresController] })
export class CheckFiguresModule {}

import { Module } from '@nestjs/common';
import { FiguresController } from './figures.controller.js';

@Module({ controllers: [FiguresController] })
export class FiguresModule {}

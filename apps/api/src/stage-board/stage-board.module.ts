import { Module } from '@nestjs/common';
import { StageBoardController } from './stage-board.controller.js';

@Module({ controllers: [StageBoardController] })
export class StageBoardModule {}

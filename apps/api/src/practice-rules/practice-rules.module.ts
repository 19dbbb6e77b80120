import { Module } from '@nestjs/common';
import { PracticeRulesController } from './practice-rules.controller.js';

@Module({ controllers: [PracticeRulesController] })
export class PracticeRulesModule {}

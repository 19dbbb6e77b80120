import { Module } from '@nestjs/common';
import { MessageTextsController } from './message-texts.controller.js';

@Module({ controllers: [MessageTextsController] })
export class MessageTextsModule {}

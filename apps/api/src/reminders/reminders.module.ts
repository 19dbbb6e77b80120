import { Module } from '@nestjs/common';
import { RepliesController } from './replies.controller.js';
import { RemindersController } from './reminders.controller.js';

@Module({ controllers: [RemindersController, RepliesController] })
export class RemindersModule {}

import { Module } from '@nestjs/common';
import { CaughtMailController } from './caught-mail.controller.js';

@Module({ controllers: [CaughtMailController] })
export class CaughtMailModule {}

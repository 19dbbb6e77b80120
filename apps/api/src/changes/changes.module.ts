import { Module } from '@nestjs/common';
import { ChangeFeed } from './change-feed.js';
import { ChangesController } from './changes.controller.js';

@Module({ controllers: [ChangesController], providers: [ChangeFeed] })
export class ChangesModule {}

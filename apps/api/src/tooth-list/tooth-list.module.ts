import { Module } from '@nestjs/common';
import { ToothListController } from './tooth-list.controller.js';

@Module({ controllers: [ToothListController] })
export class ToothListModule {}

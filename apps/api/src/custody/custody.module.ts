import { Module } from '@nestjs/common';
import { ObjectsController } from './objects.controller.js';
import { ParcelsController } from './parcels.controller.js';

@Module({ controllers: [ObjectsController, ParcelsController] })
export class CustodyModule {}

import { Module } from '@nestjs/common';
import { MaterialLotsController } from './material-lots.controller.js';
import { ObjectsController } from './objects.controller.js';
import { ParcelsController } from './parcels.controller.js';

@Module({ controllers: [MaterialLotsController, ObjectsController, ParcelsController] })
export class CustodyModule {}

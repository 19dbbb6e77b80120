import { Module } from '@nestjs/common';
import { NoticesProcessor } from './notices.processor.js';
import { PostService } from './post.service.js';
import { RemindersProcessor } from './reminders.processor.js';

@Module({ providers: [PostService, RemindersProcessor, NoticesProcessor] })
export class NoticesModule {}

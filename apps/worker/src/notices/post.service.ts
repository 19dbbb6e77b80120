import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type { Post } from '@archwright/casework';
import { createMailer, type Mailer } from '@archwright/notices';
import { CONFIGURATION, senderOf, type Configuration } from '@archwright/platform';

/** The mail server of this process, and in whose name it is used. */
@Injectable()
export class PostService implements Post, OnApplicationShutdown {
  readonly mailer: Mailer;
  readonly from: Post['from'];
  readonly publicUrl: string;
  readonly linkSecret: string;

  constructor(@Inject(CONFIGURATION) { smtpUrl, mailFrom, publicUrl, sessionSecret }: Configuration) {
    this.from = senderOf(mailFrom);
    this.mailer = createMailer({ smtpUrl, from: this.from });
    this.publicUrl = publicUrl.replace(/\/$/, '');
    this.linkSecret = sessionSecret;
  }

  onApplicationShutdown(): void {
    this.mailer.close();
  }
}

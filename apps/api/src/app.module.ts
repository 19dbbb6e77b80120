import { Module, type DynamicModule } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { DatabaseModule, PlatformModule, type Configuration } from '@archwright/platform';
import { createDataSource } from '@archwright/records';
import type { Logger } from 'pino';
import { AftercareModule } from './aftercare/aftercare.module.js';
import { CallTasksModule } from './call-tasks/call-tasks.module.js';
import { ArrivalChecksModule } from './arrival-checks/arrival-checks.module.js';
import { CustodyModule } from './custody/custody.module.js';
import { CaughtMailModule } from './caught-mail/caught-mail.module.js';
import { CheckFiguresModule } from './check-figures/check-figures.module.js';
import { CautionsModule } from './cautions/cautions.module.js';
import { DemoClockModule } from './demo-clock/demo-clock.module.js';
import { ChangesModule } from './changes/changes.module.js';
import { ItinerariesModule } from './itineraries/itineraries.module.js';
import { LabOrdersModule } from './lab-orders/lab-orders.module.js';
import { LabModule } from './lab/lab.module.js';
import { WorkloadModule } from './workload/workload.module.js';
import { RemindersModule } from './reminders/reminders.module.js';
import { CasesModule } from './cases/cases.module.js';
import { RipplesModule } from './ripples/ripples.module.js';
import { OffersModule } from './offers/offers.module.js';
import { HoldsModule } from './holds/holds.module.js';
import { AppointmentsModule } from './appointments/appointments.module.js';
import { DisturbancesModule } from './disturbances/disturbances.module.js';
import { FreedTimeModule } from './freed-time/freed-time.module.js';
import { HealthModule } from './health/health.module.js';
import { PracticeModule } from './practice/practice.module.js';
import { ResourcesModule } from './resources/resources.module.js';
import { PatientsModule } from './patients/patients.module.js';
import { RemakeAlertsModule } from './remake-alerts/remake-alerts.module.js';
import { StageBoardModule } from './stage-board/stage-board.module.js';
import { StagesModule } from './stages/stages.module.js';
import { MessageTextsModule } from './message-texts/message-texts.module.js';
import { ToothListModule } from './tooth-list/tooth-list.module.js';
import { TransfersModule } from './transfers/transfers.module.js';
import { MeasurementRangesModule } from './measurement-ranges/measurement-ranges.module.js';
import { ScreeningFindingsModule } from './screening-findings/screening-findings.module.js';
import { AuditTrailModule } from './audit-trail/audit-trail.module.js';
import { UsersModule } from './users/users.module.js';
import { FiguresModule } from './figures/figures.module.js';
import { PatientImportsModule } from './patient-imports/patient-imports.module.js';
import { TreatmentPathsModule } from './treatment-paths/treatment-paths.module.js';
import { PracticeRulesModule } from './practice-rules/practice-rules.module.js';
import { SetupModule } from './setup/setup.module.js';
import { SessionGuard } from './security/session.guard.js';
import { SessionsModule } from './sessions/sessions.module.js';

/** Everything that answers over HTTP. Every route wants a session unless it says otherwise. */
@Module({})
export class AppModule {
  static forRoot(configuration: Configuration, logger: Logger): DynamicModule {
    const source = createDataSource({
      url: configuration.databaseUrl,
      applicationName: 'archwright-api',
      connections: configuration.databaseConnections,
    });
    return {
      module: AppModule,
      imports: [
        PlatformModule.forRoot(configuration, logger),
        DatabaseModule.forRoot(source),
        AftercareModule,
        CautionsModule,
        CheckFiguresModule,
        CasesModule,
        HealthModule,
        AppointmentsModule,
        ArrivalChecksModule,
        HoldsModule,
        OffersModule,
        RipplesModule,
        FreedTimeModule,
        DisturbancesModule,
        CallTasksModule,
        CaughtMailModule,
        ChangesModule,
        ItinerariesModule,
        CustodyModule,
        DemoClockModule,
        LabModule,
        WorkloadModule,
        LabOrdersModule,
        MeasurementRangesModule,
        RemindersModule,
        PatientsModule,
        SessionsModule,
        PracticeModule,
        ResourcesModule,
        RemakeAlertsModule,
        ScreeningFindingsModule,
        StageBoardModule,
        StagesModule,
        MessageTextsModule,
        ToothListModule,
        TransfersModule,
        SetupModule,
        UsersModule,
        AuditTrailModule,
        FiguresModule,
        PatientImportsModule,
        TreatmentPathsModule,
        PracticeRulesModule,
      ],
      providers: [{ provide: APP_GUARD, useClass: SessionGuard }],
    };
  }
}

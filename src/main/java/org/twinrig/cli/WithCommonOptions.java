package org.twinrig.cli;

/** A command that has the options all commands share. */
sealed interface WithCommonOptions
    permits DemoCommand,
        StudyCommand,
        TranslateCommand,
        GatherCommand,
        InspectCommand,
        SimulateCommand,
        PlanCommand,
        CompareCommand,
        ProvePlanCommand,
        ProveCommand,
        ProveSealsCommand,
        ProveFeaturesCommand {
  /** The shared options. */
  CommonOptions common();
}

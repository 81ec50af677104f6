package org.twinrig.cli;

/** A command that has the options all commands share. */
sealed interface WithCommonOptions
    permits DemoCommand,
        StudyCommand,
        TranslateCommand,
        ExplainCommand,
        GatherCommand,
        InspectCommand,
        SimulateCommand,
        PlanCommand,
        CompareCommand,
        WorkbenchCommand {
  /** The shared options. */
  CommonOptions common();
}

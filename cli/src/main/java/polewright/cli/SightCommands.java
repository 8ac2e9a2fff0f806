package polewright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.sighting.SightingEntries;
import polewright.operations.sighting.SightingEntry;

/** One command for each kind of sighting. */
@Command(name = "sight", description = "Log a sighting: anything that shows where the axis points.")
final class SightCommands {
    private SightCommands() {}

    /** The typed sightings in the order of their table, then those by camera. */
    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        CommandLine sight = new CommandLine(new SightCommands(), factory);
        for (SightingEntry entry : SightingEntries.all()) {
            Action action = entry.action();
            sight.addSubcommand(ActionCommand.of(action, workbench));
        }
        sight.addSubcommand(new CommandLine(SightFramesCommands.Turned.class, factory));
        sight.addSubcommand(new CommandLine(SightFramesCommands.Drift.class, factory));
        return sight;
    }
}

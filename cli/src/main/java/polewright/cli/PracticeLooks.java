package polewright.cli;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.mount.rig.Optic;
import polewright.operations.Workbench;
import polewright.operations.practice.PracticeNight;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.PracticeAction;
import polewright.sky.InputRefused;

/** Observations in a practice night. */
@Command(
        name = "look",
        description = "Read an instrument or look through an optic of the practice rig.",
        subcommands = {
            PracticeLooks.Compass.class,
            PracticeLooks.Scale.class,
            PracticeLooks.Rocking.class,
            PracticeLooks.Drift.class
        })
final class PracticeLooks {
    @Command(name = "compass", description = "Read the compass along the axis.")
    static final class Compass extends PracticeCommands.PracticeActionCommand {
        Compass(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.ReadCompass();
        }
    }

    @Command(name = "scale", description = "Level the base and read the wedge's scale.")
    static final class Scale extends PracticeCommands.PracticeActionCommand {
        Scale(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.ReadScale();
        }
    }

    @Command(name = "rocking", description = "Look through an optic while the tube swings in right ascension.")
    static final class Rocking extends PracticeCommands.PracticeActionCommand {
        @Option(names = "--with", paramLabel = "OPTIC", description = "Which optic. Default: the widest.")
        private @Nullable String optic;

        @Mixin
        private PracticeCommands.RockedPicture picture;

        Rocking(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.RockAndLook(
                    optic != null
                            ? optic
                            : night.state()
                                    .scenario()
                                    .rig()
                                    .widestOptic()
                                    .map(Optic::name)
                                    .orElseThrow(() -> new InputRefused(
                                            "the rig has no optics",
                                            "begin another practice with a rig that has a finder")));
        }

        @Override
        void afterwards(CompletedAction done, Workbench bench, Output out) {
            picture.draw(done, bench, out);
        }
    }

    @Command(name = "drift", description = "Centre a star and watch it drift while the mount tracks.")
    static final class Drift extends PracticeCommands.PracticeActionCommand {
        @Parameters(paramLabel = "STAR", description = "Which star.")
        private String star;

        @Option(names = "--minutes", required = true, paramLabel = "MINUTES", description = "How long to watch it.")
        private double minutes;

        Drift(Workbench workbench) {
            super(workbench);
        }

        @Override
        PracticeAction action(PracticeNight night) {
            return new PracticeAction.WatchStar(star, Duration.ofSeconds(Math.round(minutes * 60)));
        }
    }
}

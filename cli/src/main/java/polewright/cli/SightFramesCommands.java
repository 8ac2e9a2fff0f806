package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.TrackedSequence;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.action.NightEntry;
import polewright.operations.camera.FrameSeries;
import polewright.operations.sighting.Replacement;
import polewright.report.json.FramesJson;
import polewright.report.text.AxisWords;
import polewright.report.text.FrameWords;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.attitude.CameraAttitude;

/** Sightings by a camera. */
final class SightFramesCommands {
    private SightFramesCommands() {}

    /** Common base: frames, solved at the night's site. */
    abstract static class SightFramesCommand extends AppendingCommand {
        @Mixin
        private SeveralFrames frames;

        @Mixin
        private InsteadOfOption insteadOf;

        private List<String> found = List.of();
        private Optional<ObjectNode> foundJson = Optional.empty();
        private Optional<Instant> first = Optional.empty();
        private String kind = "";

        SightFramesCommand(Workbench workbench) {
            super(workbench, "camera frames");
        }

        /** The result of the frames. */
        record Told(Sighting sighting, List<String> words, ObjectNode json) {}

        abstract Told told(FrameSeries series, NightEvent.Begun begun);

        @Override
        final NightEntry.Entered entered(ActionContext context) {
            NightEvent.Begun begun = context.begun();
            try {
                FrameSeries series = frames.place(bench(), output(), begun.site(), begun.weather());
                frames.refuseDaylight(series, begun.site());
                Told told = told(series, begun);
                refuseSeenAlready(told.sighting(), context.before(), insteadOf.replaced(context.night()));
                List<String> lines = new ArrayList<>(AxisWords.frames(series.frames()));
                lines.addAll(told.words());
                found = lines;
                foundJson = Optional.of(told.json());
                kind = told.sighting().kind();
                first = Optional.of(series.attitudes().get(0).at());
                return NightEntry.Entered.of(
                        List.of(insteadOf.event(new NightEvent.SightingTaken(told.sighting()), context.night())));
            } catch (InputRefused refused) {
                // The frames cannot be used; what was typed is valid.
                throw new OperationFailed(String.valueOf(refused.getMessage()));
            }
        }

        /** The same frames twice would count as two sightings, and make the fix too certain. */
        private static void refuseSeenAlready(Sighting sighting, NightState before, Optional<Replacement> replaced) {
            for (LoggedEvent logged : before.standing()) {
                boolean isReplaced =
                        replaced.filter(one -> one.seq() == logged.seq()).isPresent();
                if (!isReplaced
                        && logged.event() instanceof NightEvent.SightingTaken taken
                        && shareFrames(taken.sighting(), sighting)) {
                    throw new InputRefused(
                            "these frames are already in the log as #" + logged.seq(),
                            "take new ones, or first remove that with polewright undo " + logged.seq());
                }
            }
        }

        private static boolean shareFrames(Sighting logged, Sighting fresh) {
            if (logged instanceof TurnedFrames before && fresh instanceof TurnedFrames now) {
                List<Instant> times =
                        before.frames().stream().map(CameraAttitude::at).toList();
                return now.frames().stream().anyMatch(frame -> times.contains(frame.at()));
            }
            return logged instanceof FieldDrift before
                    && fresh instanceof FieldDrift now
                    && before.at().equals(now.at());
        }

        @Override
        final Optional<Instant> given() {
            return first;
        }

        @Override
        final String logged() {
            return kind + insteadOf.words();
        }

        @Override
        final List<String> found(NightEntry.Logged entry) {
            return found;
        }

        @Override
        final Optional<ObjectNode> foundJson(NightEntry.Logged entry) {
            return foundJson;
        }
    }

    @Command(
            name = "frames",
            description = "Two or more camera frames between which right ascension was turned and nothing else.",
            footer = {
                "",
                "Turn by 30 to 90 degrees; a third frame checks the two. Any part of the sky will do.",
                "For example:",
                "  polewright sight frames first.fits second.fits third.fits"
            })
    static final class Turned extends SightFramesCommand {
        @Mixin
        private DriveOption drive;

        @Mixin
        private PictureOption picture;

        private Runnable drawing = () -> {};

        Turned(Workbench workbench) {
            super(workbench);
        }

        @Override
        Told told(FrameSeries series, NightEvent.Begun begun) {
            AxisFromFrames axis = AxisFromFrames.of(begun.site(), series.attitudes());
            drawing = () -> AxisPicture.draw(picture, bench(), output(), series, axis);
            return new Told(
                    TurnedFrames.of(series.attitudes(), drive.told()),
                    AxisWords.ofFramesAlone(axis, drive.told()),
                    FramesJson.of(axis, drive.told()));
        }

        @Override
        void afterwards(NightState night) {
            drawing.run();
        }
    }

    @Command(
            name = "drift-frames",
            description = "Camera frames of one field, taken in sequence while the mount tracked it.",
            footer = {
                "",
                "Five to fifteen minutes of frames work best. Leave the slow motions alone meanwhile.",
                "For example:",
                "  polewright sight drift-frames drift-*.fits"
            })
    static final class Drift extends SightFramesCommand {
        Drift(Workbench workbench) {
            super(workbench);
        }

        @Override
        Told told(FrameSeries series, NightEvent.Begun begun) {
            TrackedSequence sequence = TrackedSequence.of(begun.site(), begun.weather(), series.attitudes());
            return new Told(FieldDrift.of(sequence), FrameWords.of(sequence), FramesJson.of(sequence));
        }
    }
}

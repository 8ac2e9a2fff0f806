package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.mount.pointing.CentredStar;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.action.NightEntry;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.input.CentringTable;
import polewright.operations.input.FileInput;
import polewright.operations.sighting.Centring;
import polewright.report.json.PointingJson;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;

/** Logs a centred star: by name, by a camera frame, or many from a table. */
final class CentreCommand extends ActionCommand {
    // A frame's centre is known to arcseconds; what remains is the mount's own instability between reading and
    // exposure.
    private static final double OF_A_FRAME_ARCMIN = 10 / 60.0;

    @Option(
            names = "--frame",
            paramLabel = "FILE",
            converter = FileInput.class,
            description =
                    "Instead of a star: the centre of this frame, found from its stars. Uses the frame's own time,"
                            + " unless --at is given.")
    private @Nullable Path frame;

    @Mixin
    private FrameOptions clues;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            converter = FileInput.class,
            description = "Read many from a table (docs/pointing.md).")
    private @Nullable Path csv;

    private List<CentredStar> inTable = List.of();

    private CentreCommand(Workbench workbench) {
        super(workbench, Centring.ACTION);
    }

    static CommandLine of(Workbench workbench) {
        return line(new CentreCommand(workbench));
    }

    @Override
    NightEntry.Entered entered(ActionContext context) {
        if (csv != null) {
            if (frame != null || values().values().stream().anyMatch(value -> value != Boolean.FALSE)) {
                throw new WrongUsage("a table and a star cannot be combined. Give --csv alone.");
            }
            inTable = read(csv);
            inTable.forEach(star -> Centring.requireNotSun(star.star()));
            return NightEntry.Entered.of(inTable.stream()
                    .<NightEvent>map(NightEvent.StarCentred::new)
                    .toList());
        }
        return frame == null ? super.entered(context) : centredOn(frame, context);
    }

    private static List<CentredStar> read(Path file) {
        try {
            return CentringTable.read(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            throw new OperationFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new OperationFailed(file + " cannot be read. Give a table of centrings as in docs/pointing.md.");
        }
    }

    private NightEntry.Entered centredOn(Path file, ActionContext context) {
        if (values().containsKey(Centring.BODY.name())) {
            throw new InputRefused("a star and a frame cannot be combined", "give the one that was centred");
        }
        try (Progress progress = Progress.of(bench(), output(), FrameReading.STEPS_A_FRAME)) {
            PlacedFrame placed = new FrameReading(bench().clock(), progress)
                    .place(
                            FrameFile.read(file),
                            clues.clues(Optional.of(context.begun().site())),
                            ExposureTime.ifKnown(given()),
                            Optional.empty());
            var plate = placed.match().plate();
            Map<String, Object> values = new HashMap<>(values());
            values.put(
                    Centring.BODY.name(),
                    new FixedStar(
                            "the middle of " + placed.name(),
                            CatalogueStar.fixed(plate.rightAscension(), plate.declination())));
            values.putIfAbsent(Centring.SIGMA.name(), OF_A_FRAME_ARCMIN);
            Optional<Instant> at = given().or(placed::at);
            return entered(values, context.doneAt(at));
        }
    }

    @Override
    String logged(NightEntry.Logged logged) {
        return csv == null
                ? super.logged(logged)
                : inTable.size() + (inTable.size() == 1 ? " centring" : " centrings") + " from " + csv;
    }

    @Override
    ObjectNode answer(LoggedEvent logged, NightState after) {
        return csv == null ? super.answer(logged, after) : PointingJson.of(after, NightPointing.of(after));
    }

    @Override
    void afterwards(NightState night) {
        if (!output().isJson()) {
            output().say(bench(), PointingWords.brief(night, NightPointing.of(night)));
        }
    }
}

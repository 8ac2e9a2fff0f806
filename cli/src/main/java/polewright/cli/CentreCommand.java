package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.CentringTable;
import polewright.operations.input.FileInput;
import polewright.operations.input.MountReadingInput;
import polewright.operations.input.UtcInput;
import polewright.report.json.PointingJson;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;

@Command(
        name = "centre",
        description = {
            "Log that a star is centred, and the mount's reading.",
            "Three or more stars give the mount's errors and the polar axis."
        },
        footer = {
            "",
            "For example:",
            "  polewright centre capella --reads 5h17m38s,+46d12m36s",
            "  polewright centre rigel --reads 78.71,-8.12 --j2000",
            "  polewright centre vega --hour-angle --reads 2h10m,+38d48m --at 2026-11-25T20:00Z",
            "  polewright centre --frame vega-field.fits --reads 18h37m41s,+38d48m",
            "  polewright centre --csv centrings.csv"
        })
final class CentreCommand extends AppendingCommand {
    // A frame's centre is known to arcseconds; what remains is the mount's own instability between reading and
    // exposure.
    private static final Angle OF_A_FRAME = Angle.ofArcseconds(10);

    @Parameters(
            paramLabel = "BODY",
            arity = "0..1",
            converter = BodyFinder.class,
            description = "What was centred: a star, a planet, an object, or RA,DEC in degrees (ICRS), such as the"
                    + " centre of a matched frame.")
    private @Nullable SkyBody body;

    @Option(
            names = "--reads",
            paramLabel = "RA,DEC",
            converter = MountReadingInput.class,
            description = "What the mount shows: 5h17m38s,+46d12m36s, or plain degrees.")
    private MountReadingInput.@Nullable Typed reads;

    @Option(names = "--j2000", description = "The mount shows J2000.0 coordinates, not of date.")
    private boolean isJ2000;

    @Option(names = "--hour-angle", description = "The mount shows hour angle, west positive, not right ascension.")
    private boolean isHourAngle;

    @Option(names = "--through-pole", description = "The fork swung through the pole to get there.")
    private boolean isThroughPole;

    @Option(names = "--sigma", paramLabel = "ARCMIN", description = "Centring uncertainty, 1 sigma. Default: 1.")
    private @Nullable Double sigmaArcmin;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "When it was centred, with time zone: 2026-11-25T20:00Z. Default: now.")
    private @Nullable Instant at;

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

    @Mixin
    private InsteadOfOption insteadOf;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            converter = FileInput.class,
            description = "Read many from a table (docs/pointing.md).")
    private @Nullable Path csv;

    private List<CentredStar> inTable = List.of();

    CentreCommand(Workbench workbench) {
        super(workbench, "centred");
    }

    @Override
    List<NightEvent> events(Workbench bench, NightEvent.Begun begun, NightState before) {
        if (csv == null) {
            return super.events(bench, begun, before);
        }
        if (body != null || reads != null || frame != null || insteadOf.seq().isPresent()) {
            throw new WrongUsage("a table and a star cannot be combined. Give --csv alone.");
        }
        inTable = read(csv);
        inTable.forEach(star -> requireNotSun(star.star()));
        return inTable.stream().<NightEvent>map(NightEvent.StarCentred::new).toList();
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

    @Override
    NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
        if (body != null && frame != null) {
            throw new InputRefused("a star and a frame cannot be combined", "give the one that was centred");
        }
        Optional<Middle> middle = frame == null
                ? Optional.ofNullable(body).map(star -> new Middle(star, given()))
                : Optional.of(middleOf(frame, begun));
        if (middle.isEmpty() || reads == null) {
            throw new InputRefused(
                    "the star and the mount's reading are both needed",
                    "for example: polewright centre capella --reads 5h17m38s,+46d12m36s");
        }
        SkyBody star = middle.get().star();
        requireNotSun(star);
        MountDisplay display = isHourAngle
                ? new MountDisplay.HourAngle(reads.first(), reads.declination())
                : new MountDisplay.RightAscension(reads.first(), reads.declination(), isJ2000);
        Angle usual = frame == null ? CentredStar.USUAL_SIGMA : OF_A_FRAME;
        Angle sigma = sigmaArcmin == null ? usual : Angle.ofArcminutes(sigmaArcmin);
        if (!(sigma.arcminutes() >= 0.001 && sigma.degrees() <= 5)) {
            throw new InputRefused(
                    "an uncertainty of " + sigmaArcmin + " arcminutes is outside 0.001 to 300", "1 is usual by eye");
        }
        Instant when = middle.get()
                .at()
                .orElseGet(() -> insteadOf
                        .replaced(night())
                        .map(one -> one.measurement().seenAt())
                        .orElseGet(bench::now));
        return insteadOf.event(
                new NightEvent.StarCentred(new CentredStar(when, star, display, isThroughPole, sigma)), night());
    }

    /** What was at the centre, and when, if that is known. */
    private record Middle(SkyBody star, Optional<Instant> at) {}

    private Middle middleOf(Path file, NightEvent.Begun begun) {
        try (Progress progress = Progress.of(bench(), output(), FrameReading.STEPS_A_FRAME)) {
            PlacedFrame placed = new FrameReading(bench().clock(), progress)
                    .place(
                            FrameFile.read(file),
                            clues.clues(Optional.of(begun.site())),
                            ExposureTime.ifKnown(given()),
                            Optional.empty());
            var plate = placed.match().plate();
            return new Middle(
                    new FixedStar(
                            "the middle of " + placed.name(),
                            CatalogueStar.fixed(plate.rightAscension(), plate.declination())),
                    given().or(placed::at));
        }
    }

    private static void requireNotSun(SkyBody star) {
        if (star == SolarSystemBody.SUN) {
            throw new InputRefused(
                    "the Sun must never be centred",
                    "keep the tube capped by day, or use a proper filter and a planet");
        }
    }

    @Override
    Optional<Instant> given() {
        return Optional.ofNullable(at);
    }

    @Override
    String logged() {
        if (csv != null) {
            return inTable.size() + (inTable.size() == 1 ? " centring" : " centrings") + " from " + csv;
        }
        return "centred "
                + (body != null ? body.label() : frame != null ? "the middle of " + frame.getFileName() : "a star")
                + insteadOf.words();
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

package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.mount.rig.MountKind;
import polewright.operations.LogEntry;
import polewright.operations.Workbench;
import polewright.operations.input.FileInput;
import polewright.report.json.NightJson;
import polewright.report.text.AngleWords;
import polewright.report.text.GroundWords;
import polewright.report.text.SimulationWords;
import polewright.report.text.Wrapping;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.simulation.RehearsedNight;
import polewright.store.NightLog;

@Command(
        name = "demo",
        description = "Play a whole night at an invented site under the real sky, with a hidden axis offset, simulated"
                + " readings,"
                + " and camera frames that are rendered and then analysed like any others.")
final class DemoCommand implements Callable<Integer> {
    private static final long DEFAULT_SEED = 54;

    private final Workbench workbench;

    @Option(
            names = "--seed",
            paramLabel = "NUMBER",
            description = "Random seed; another seed is another night. Default: 54.")
    private long seed = DEFAULT_SEED;

    @Option(names = "--by-eye", description = "A night without a camera: compass, scale, centre of rotation and drift.")
    private boolean byEye;

    @Option(names = "--south", description = "At Tussock Flat (44 S) instead of Larkfell (55 N).")
    private boolean south;

    @Option(
            names = "--frames",
            paramLabel = "FOLDER",
            converter = FileInput.class,
            description = "Keep the frames there as FITS files. The folder must be new or empty.")
    private @Nullable Path frames;

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "The log for the demo night. Default: demo.sqlite in your data"
                    + " folder, separate from your own nights.")
    private @Nullable Path log;

    @Mixin
    private Output output;

    DemoCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (byEye && frames != null) {
            throw new WrongUsage("--by-eye has no frames to keep. Leave out --frames or --by-eye.");
        }
        DemoScene scene = south ? DemoScene.TUSSOCK_FLAT : DemoScene.LARKFELL;
        Path file = log == null ? workbench.dataFolder().resolve("demo.sqlite") : log;
        DemoAlbum album = frames == null ? DemoAlbum.withoutFiles() : DemoAlbum.in(frames);
        // Opened first: an unusable log is reported before the night is simulated.
        try (NightLog opened = NightLog.open(file)) {
            if (output.isJson()) {
                List<ObjectNode> nodes = new ArrayList<>();
                List<RehearsedNight.Moment> night = play(scene, album, moment -> nodes.add(json(moment)));
                keep(night, opened);
                output.print(workbench, nodes);
                return 0;
            }
            begin(scene);
            List<RehearsedNight.Moment> night = play(scene, album, moment -> tell(moment, album));
            output.say(workbench, SimulationWords.truth(night));
            end(scene, album, file, keep(night, opened));
        }
        return 0;
    }

    private List<RehearsedNight.Moment> play(DemoScene scene, DemoAlbum album, Consumer<RehearsedNight.Moment> told) {
        // Named, so that a seed gives the same night on every machine.
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        return byEye ? scene.byEye(told, random) : scene.withFrames(album, told, random);
    }

    private static NightId keep(List<RehearsedNight.Moment> night, NightLog opened) {
        List<LoggedEvent> events =
                night.stream().map(RehearsedNight.Moment::event).toList();
        return LogEntry.importNights(opened, List.of(events), false, Optional.empty())
                .get(0);
    }

    private static ObjectNode json(RehearsedNight.Moment moment) {
        return NightJson.afterEvent(moment.event(), moment.night());
    }

    private void begin(DemoScene scene) {
        output.say(
                workbench,
                List.of(
                        "A simulated night at " + scene.name() + ", an invented site (" + AngleWords.site(scene.site())
                                + "), under the real sky. The readings are simulated (seed " + seed + ")."
                                + (byEye ? "" : " The camera's frames are rendered, then analysed like real ones.")
                                + " The axis starts a few degrees off. You will see how far at the end.",
                        ""));
        output.say(workbench, GroundWords.bearings(scene.ground(), MountKind.FORK_ON_WEDGE));
        output.say(
                workbench, List.of("(With the home position: ./polewright ground --site " + scene.typed() + ")", ""));
    }

    private void tell(RehearsedNight.Moment moment, DemoAlbum album) {
        output.say(workbench, SimulationWords.moment(moment, album.newOnes()));
    }

    private void end(DemoScene scene, DemoAlbum album, Path file, NightId id) {
        List<String> lines = new ArrayList<>();
        album.folder().ifPresent(folder -> {
            lines.add("");
            lines.add("The " + album.taken() + " frames are in " + folder);
            lines.add("TRY   "
                    + Wrapping.unbroken(
                            "./polewright attitude " + folder.resolve(DemoAlbum.fileName(1)) + " --near pole"));
            lines.add("      the first three, right ascension turned between them:");
            lines.add("      "
                    + Wrapping.unbroken("./polewright axis " + folder + "/frame-0[123].fits --site " + scene.typed()));
        });
        lines.addAll(List.of(
                "",
                "MORE  ./polewright demo --by-eye          a night without a camera",
                "      ./polewright demo --south           the same under the southern sky",
                "      ./polewright demo --frames FOLDER   keeps the frames, to try commands on",
                "",
                "The night is kept in " + file,
                "VIEW  everything that was done:"));
        lines.addAll(Wrapping.command("./polewright log --night " + id.number() + " --log " + file));
        lines.add("COPY  it to a file:");
        lines.addAll(Wrapping.command("./polewright log export night.jsonl --night " + id.number() + " --log " + file));
        lines.addAll(List.of(
                "YOURS " + Wrapping.unbroken("./polewright ground --site LAT,LON"),
                "      " + Wrapping.unbroken("./polewright begin --site LAT,LON")));
        output.say(workbench, lines);
    }
}

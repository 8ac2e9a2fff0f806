package polewright.app.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.app.json.NightJson;
import polewright.app.text.AngleWords;
import polewright.app.text.FixWords;
import polewright.app.text.GroundWords;
import polewright.app.text.NightWords;
import polewright.app.text.Wrapping;
import polewright.axis.AxisOffset;
import polewright.axis.advice.Advice;
import polewright.axis.allowance.DiscAllowance;
import polewright.axis.rig.MountKind;
import polewright.axis.rig.Rig;
import polewright.night.GroundPlan;
import polewright.night.NightState;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;
import polewright.rehearsal.HiddenWedge;
import polewright.rehearsal.RehearsedNight;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

@Command(
        name = "demo",
        description = "A whole night at the invented site Larkfell, with a hidden axis offset and made-up readings.")
final class DemoCommand implements Callable<Integer> {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant EVENING = Instant.parse("2026-11-25T19:00:00Z");
    private static final long DEFAULT_SEED = 54;
    private static final double LEAST_OFFSET_DEG = 3;
    private static final double SPREAD_OFFSET_DEG = 1;

    private final Workbench workbench;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "Another seed makes another night. Default: 54.")
    private long seed = DEFAULT_SEED;

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "Where to keep the night. Default: demo.sqlite in your data"
                    + " folder, apart from your own nights.")
    private @Nullable Path log;

    @Mixin
    private Output output;

    DemoCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        // Named, so that a seed makes the same night on every machine.
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<RehearsedNight.Moment> night = play(random);
        Path file = log == null ? workbench.dataFolder().resolve("demo.sqlite") : log;
        NightId id = keep(night, file);
        if (output.isJson()) {
            output.print(
                    workbench,
                    night.stream()
                            .map(m -> NightJson.afterEvent(
                                    m.event(),
                                    m.night(),
                                    Suggestions.star(m.night(), m.event().at())))
                            .toList());
            return 0;
        }
        tell(night, file, id);
        return 0;
    }

    private static List<RehearsedNight.Moment> play(RandomGenerator random) {
        double direction = 2 * Math.PI * random.nextDouble();
        double distanceArcmin = 60 * (LEAST_OFFSET_DEG + SPREAD_OFFSET_DEG * random.nextDouble());
        AxisOffset hidden =
                AxisOffset.ofArcminutes(distanceArcmin * Math.sin(direction), distanceArcmin * Math.cos(direction));
        HiddenWedge wedge = HiddenWedge.of(LARKFELL, Rig.typicalForkOnWedge(), hidden, random);
        return RehearsedNight.play(
                "Larkfell",
                wedge,
                DiscAllowance.VISUAL,
                EVENING,
                NamedStars.bundled().all(),
                random);
    }

    private static NightId keep(List<RehearsedNight.Moment> night, Path file) {
        try (NightLog opened = NightLog.open(file)) {
            return opened.importNight(
                    night.stream().map(RehearsedNight.Moment::event).toList());
        }
    }

    private void tell(List<RehearsedNight.Moment> night, Path file, NightId id) {
        output.say(
                workbench,
                List.of(
                        "A rehearsal at Larkfell, an invented site (54.60 N, 2.90 W), on the real sky. The readings are"
                                + " made up, from seed " + seed
                                + ". The axis is off by some degrees: how far is hidden until the end.",
                        ""));
        ground();
        for (RehearsedNight.Moment moment : night) {
            output.say(
                    workbench,
                    NightWords.afterEvent(
                            moment.event(),
                            moment.night(),
                            Suggestions.star(moment.night(), moment.event().at())));
        }
        truth(night);
        output.say(
                workbench,
                List.of(
                        "",
                        "The night is kept in " + file,
                        "LOOK  " + Wrapping.unbroken("./polewright log --night " + id.number() + " --log " + file),
                        "COPY  "
                                + Wrapping.unbroken("./polewright log export night.jsonl --night " + id.number()
                                        + " --log " + file),
                        "YOURS " + Wrapping.unbroken("./polewright ground --site LAT,LON"),
                        "      " + Wrapping.unbroken("./polewright begin --site LAT,LON")));
    }

    private void ground() {
        NamedStar polaris = NamedStars.bundled().named("Polaris");
        ObservingMoment moment =
                ObservingMoment.of(LARKFELL, SkyTime.of(EVENING), Weather.standardAt(LARKFELL.heightMetres()));
        GroundPlan plan = GroundPlan.of(moment, new FixedStar(polaris.label(), polaris.place()));
        output.say(workbench, GroundWords.bearings(plan, MountKind.FORK_ON_WEDGE));
        output.say(workbench, List.of("(the home position too: ./polewright ground --site 54.60,-2.90,240)", ""));
    }

    private void truth(List<RehearsedNight.Moment> night) {
        RehearsedNight.Moment first = night.get(0);
        RehearsedNight.Moment last = night.get(night.size() - 1);
        NightState state = last.night();
        AxisOffset fix = state.fix().state().offset();
        AxisOffset truth = last.wedge().offset();
        output.say(
                workbench,
                List.of(
                        "THE TRUTH",
                        "  at first  " + FixWords.direction(first.wedge().offset()) + " ("
                                + AngleWords.size(first.wedge().offset().distance()) + " off)",
                        "  now       " + FixWords.direction(truth) + " (" + AngleWords.size(truth.distance()) + " off)",
                        "  the fix   " + FixWords.direction(fix) + ", wrong by "
                                + AngleWords.size(fix.minus(truth).distance()),
                        "  " + verdict(state, truth)));
    }

    private static String verdict(NightState state, AxisOffset truth) {
        boolean within = state.allowance().contains(truth);
        if (!(state.advice() instanceof Advice.Stop)) {
            return "Not finished: after " + state.standing().size() + " events the advice had still not said stop. The"
                    + " axis is " + (within ? "within" : "outside") + " the allowance.";
        }
        return within
                ? "Within the allowance: good enough indeed."
                : "Outside the allowance: one of the few nights that the odds leave over.";
    }
}

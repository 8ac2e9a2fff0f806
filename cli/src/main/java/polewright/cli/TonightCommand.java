package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.FileInput;
import polewright.planning.tonight.LoggedEvening;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.Purpose;
import polewright.planning.tonight.Target;
import polewright.planning.tonight.TonightsPlan;
import polewright.report.json.TonightJson;
import polewright.report.page.PlanPage;
import polewright.report.scene.TonightScene;
import polewright.report.text.AngleWords;
import polewright.report.text.TonightWords;
import polewright.session.NightState;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

@Command(
        name = "tonight",
        description = "Is the night worthwhile, when is it dark, and what to observe in which order.",
        footer = {
            "",
            "For example:",
            "  polewright tonight",
            "  polewright tonight --for camera --count 3 --target \"M 42\"",
            "  polewright tonight --plan tonight.pdf"
        })
final class TonightCommand implements Callable<Integer> {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final Workbench workbench;

    @Option(
            names = "--for",
            paramLabel = "eyes|camera",
            description =
                    "What the telescope is for tonight. Default: from tonight's work; otherwise the camera, if the"
                            + " rig has"
                            + " one.")
    private @Nullable Purpose purpose;

    @Option(
            names = "--count",
            paramLabel = "N",
            description = "Number of targets to plan, 1 to 20. Default: 8, plus fillers for long gaps.")
    private @Nullable Integer count;

    @Option(
            names = "--target",
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description = "A target that must be included: a name, or RA,DEC in degrees. May be repeated.")
    private List<SkyBody> wanted = new ArrayList<>();

    @Option(
            names = "--plan",
            paramLabel = "FILE",
            converter = FileInput.class,
            description = "Also write the plan as one page, FILE.html or FILE.pdf.")
    private @Nullable Path page;

    @Mixin
    private EveningOptions evening;

    @Mixin
    private Output output;

    @Option(names = "--dark", description = "Make the page dim red on black.")
    private boolean dark;

    TonightCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (count != null && (count < 1 || count > TonightsPlan.MOST)) {
            throw new WrongUsage(count + " targets are outside 1 to 20.");
        }
        if (page != null && !isHtml(page) && !isPdf(page)) {
            throw new WrongUsage("the page " + page + " is neither .html nor .pdf. Use one of these endings.");
        }
        EveningOptions.Typed typed = evening.typed(workbench);
        Observing observing = Observing.of(
                typed.evening().rig(), typed.night().flatMap(NightState::work), Optional.ofNullable(purpose));
        List<Target> targets = targets(typed);
        TonightsPlan plan = count == null
                ? TonightsPlan.usual(typed.evening(), observing, targets)
                : TonightsPlan.of(typed.evening(), observing, targets, count);
        TonightWords words = new TonightWords(plan, typed.zone());
        if (output.isJson()) {
            output.print(workbench, TonightJson.of(plan, typed.zone()));
        } else {
            output.say(workbench, words.all());
        }
        if (page != null) {
            PlanPage made = page(plan, words, typed);
            ResultFile.write(page, isPdf(page) ? made.pdf() : made.html().getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Written: " + page);
        }
        return 0;
    }

    private PlanPage page(TonightsPlan plan, TonightWords words, EveningOptions.Typed typed) {
        List<String> times = new ArrayList<>(words.darkness());
        times.addAll(words.preparations());
        words.cautions().forEach(caution -> times.add("Care: " + caution));
        List<String> rest = new ArrayList<>(words.others());
        rest.addAll(words.missed());
        String site = typed.night()
                .map(night -> night.begun().siteName())
                .orElseGet(() -> AngleWords.site(typed.evening().site()));
        return new PlanPage(
                site + ", night of "
                        + DAY.format(plan.evening()
                                .darkness()
                                .sunsetToSunrise()
                                .from()
                                .atZone(typed.zone())),
                words.worth(),
                times,
                words.plan(),
                rest,
                TonightScene.svg(plan, typed.zone(), dark ? Palette.DARK : Palette.LIGHT),
                dark);
    }

    private List<Target> targets(EveningOptions.Typed typed) {
        List<SkyBody> asked = new ArrayList<>(wanted);
        typed.night().map(LoggedEvening::wanted).ifPresent(asked::addAll);
        if (asked.contains(SolarSystemBody.SUN)) {
            throw new WrongUsage("the Sun is not a target for the night: it burns eyes and cameras.");
        }
        return LoggedEvening.targets(asked);
    }

    private static boolean isPdf(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
    }

    private static boolean isHtml(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".html") || name.endsWith(".htm");
    }
}

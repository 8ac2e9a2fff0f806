package polewright.cli;

import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.rig.Rig;
import polewright.operations.LogEntry;
import polewright.operations.Workbench;
import polewright.report.json.NightJson;
import polewright.report.text.AdviceWords;
import polewright.report.text.AngleWords;
import polewright.report.text.ScrewWords;
import polewright.report.text.SiteWords;
import polewright.session.DoubtfulSite;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.store.NightLog;
import polewright.store.Submission;

@Command(
        name = "begin",
        description = "Begin a night. Site, rig and work are carried over from the last one.",
        footer = {"", "For example:", "  polewright begin --site 54.60,-2.90,240 --name Larkfell"})
final class BeginCommand implements Callable<Integer> {
    private static final Duration UNDER_WAY = Duration.ofHours(4);

    private final Workbench workbench;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the site.")
    private @Nullable String siteName;

    @Option(
            names = "--allow",
            paramLabel = "ARCMIN",
            description = "How far off the pole the axis may be. Default: 5, which suits visual observing.")
    private @Nullable Double allowArcmin;

    @Option(names = "--again", description = "Begin another night even though one is under way.")
    private boolean again;

    @Option(names = "--ask", hidden = true, description = "Log nothing if the site looks wrong.")
    private boolean asks;

    @Mixin
    private AsTypedOption asTyped;

    @Mixin
    private BeginningWork purpose;

    @Mixin
    private SkyOptions sky;

    @Mixin
    private RigOption rig;

    @Mixin
    private LogOption log;

    @Mixin
    private OnceOption once;

    @Mixin
    private Output output;

    BeginCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (once.key().isPresent() && Files.exists(log.file(workbench))) {
            try (NightLog opened = log.open(workbench)) {
                Optional<Submission> sent = once.key().flatMap(opened::submitted);
                if (sent.isPresent()) {
                    return answerAgain(opened, sent.get());
                }
            }
        }
        // Validated before a log is created.
        Optional<NightEvent.Begun> remembered = log.lastBegun(workbench);
        NightEvent.Begun usable = begun(remembered);
        Optional<DoubtfulSite> doubtful =
                sky.where().doubt(workbench, sky.at(workbench), remembered).filter(odd -> !asTyped.isConfirmed());
        if (asks && doubtful.isPresent()) {
            throw new ConfirmationNeeded(
                    SiteOptions.what(doubtful.get(), workbench), SiteWords.check(doubtful.get(), ""));
        }
        BeginningWork.Taken work = purpose.taken(usable, log.lastWork(workbench), allowArcmin != null);
        try (NightLog opened = log.open(workbench)) {
            requireNoneUnderWay(opened);
            NightEvent.Begun begun = withRig(usable, EarlierNights.taught(usable.rig(), usable.site(), opened));
            Optional<Horizon> skyline = EarlierNights.skyline(begun.site(), opened)
                    .filter(told -> !told.points().isEmpty());
            List<NightEvent> told = new ArrayList<>();
            work.work().ifPresent(w -> told.add(new NightEvent.WorkSet(w)));
            skyline.ifPresent(s -> told.add(new NightEvent.HorizonSet(s)));
            Instant at = sky.at(workbench);
            NightState.ModelCache models = new NightState.ModelCache();
            LogEntry.Beginning beginning = LogEntry.begin(opened, begun, told, at, models, once.key());
            List<LoggedEvent> events = opened.events(beginning.night());
            LoggedEvent first = events.get(0);
            NightState state =
                    NightState.of(events, events.get(events.size() - 1).at(), models);
            if (output.isJson()) {
                output.print(workbench, NightJson.afterEvent(first, state));
            } else {
                output.say(
                        workbench,
                        "Begun: " + begun.siteName() + " (" + AngleWords.site(begun.site()) + "), "
                                + begun.rig().name() + " ("
                                + begun.rig().kind().words() + "), " + work.words() + ".");
                doubtful.ifPresent(odd -> output.say(workbench, "NOTE  " + SiteOptions.sentence(odd, workbench)));
                output.say(workbench, work.notes());
                skyline.ifPresent(s -> output.say(
                        workbench,
                        "Same skyline as last time, with " + s.points().size() + " corners."));
                ScrewWords.learned(begun.rig()).ifPresent(line -> output.say(workbench, line));
                beginning.notCopied().ifPresent(why -> output.say(workbench, "NOTE  " + why));
                output.say(workbench, AdviceWords.of(state));
            }
        }
        return 0;
    }

    /** The night has already begun, but the sender did not receive the answer. */
    private int answerAgain(NightLog opened, Submission sent) {
        NightState state = NightState.of(opened.events(sent.night()));
        if (output.isJson()) {
            output.print(workbench, NightJson.afterEvent(sent.event(), state));
        } else {
            output.say(workbench, "Already begun; nothing added.");
            output.say(workbench, AdviceWords.of(state));
        }
        return 0;
    }

    private static NightEvent.Begun withRig(NightEvent.Begun begun, Rig rig) {
        return new NightEvent.Begun(begun.siteName(), begun.site(), begun.weather(), rig, begun.allowance());
    }

    /** A second beginning in one evening would abandon this evening's sightings. */
    private void requireNoneUnderWay(NightLog opened) {
        if (again || opened.latest().isEmpty()) {
            return;
        }
        List<LoggedEvent> last = opened.events(LogOption.latest(opened));
        Instant lastAt = last.get(last.size() - 1).at();
        boolean underWay = last.stream().anyMatch(BeginCommand::isDone)
                && Duration.between(lastAt, sky.at(workbench)).abs().compareTo(UNDER_WAY) < 0;
        if (underWay) {
            throw new WrongUsage("a night is under way, with " + last.size() + " events, the last at " + lastAt
                    + ". Continue it, or add --again to begin another. To correct its rig or site:"
                    + " polewright rig correct, polewright site correct.");
        }
    }

    private static boolean isDone(LoggedEvent logged) {
        return !(logged.event() instanceof NightEvent.Begun
                || logged.event() instanceof NightEvent.WorkSet
                || logged.event() instanceof NightEvent.HorizonSet);
    }

    private NightEvent.Begun begun(Optional<NightEvent.Begun> remembered) {
        Site site = sky.where().siteToLog(remembered);
        boolean sameSite =
                remembered.map(NightEvent.Begun::site).filter(site::equals).isPresent();
        String name = siteName != null
                ? siteName
                : sameSite ? remembered.orElseThrow().siteName() : "a new site";
        Rig chosen = rig.rig(remembered);
        DiscAllowance allowance = allowArcmin == null ? DiscAllowance.VISUAL : disc(allowArcmin);
        if (name.isBlank()) {
            throw new WrongUsage("the site name is empty. Give one, such as --name Larkfell, or leave --name out.");
        }
        return new NightEvent.Begun(name, site, sky.weather(site), chosen, allowance);
    }

    private static DiscAllowance disc(double arcmin) {
        return WrongUsage.unlessUsable(() -> new DiscAllowance(Angle.ofArcminutes(arcmin)));
    }
}

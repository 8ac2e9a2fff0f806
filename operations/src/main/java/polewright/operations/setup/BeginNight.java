package polewright.operations.setup;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Rig;
import polewright.operations.LogEntry;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.BeginningContext;
import polewright.operations.action.Effect;
import polewright.operations.action.Entries;
import polewright.operations.action.EntriesRefused;
import polewright.operations.action.EntryNotice;
import polewright.operations.action.LooksMistaken;
import polewright.operations.action.NightBeginning;
import polewright.operations.action.NightBeginning.BeginningWork;
import polewright.operations.action.Unit;
import polewright.operations.seasons.EarlierNights;
import polewright.operations.work.CameraArguments;
import polewright.operations.work.ImpossibleWork;
import polewright.operations.work.PresetWork;
import polewright.operations.work.TonightsWork;
import polewright.operations.work.WorkActions;
import polewright.session.DoubtfulSite;
import polewright.session.NightState;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.store.NightLog;
import polewright.store.Submission;
import polewright.store.SubmissionKey;

/** Begins a night. Site, rig and work are carried over from the last one. */
public final class BeginNight {
    private static final Duration UNDER_WAY = Duration.ofHours(4);

    private static final Argument<Site> SITE = SiteArguments.SITE.otherwise("as last time");
    private static final Argument<String> NAME = Argument.option("name", "Name of the site", "", Words.plain("NAME"));
    private static final Argument<WorkPreset> FOR = WorkActions.purpose("as last time");
    private static final Argument<Double> ALLOW = Argument.option(
                    "allow", "A plain limit for the axis offset", "", Figure.of(Unit.ARCMINUTES))
            .otherwise("5, if there is no work")
            .seldom();
    private static final Argument<Double> PRESSURE = Argument.option(
                    "pressure", "Air pressure at the site", "", Figure.of(Unit.HECTOPASCALS))
            .otherwise("the standard pressure at its height")
            .seldom();
    private static final Argument<Double> TEMPERATURE = Argument.option(
                    "temperature", "Air temperature", "", Figure.signed(Unit.CELSIUS))
            .otherwise("10")
            .seldom();
    private static final Argument<Path> RIG = RigFile.RIG.otherwise("the last night's rig");
    private static final Argument<Instant> AT =
            Argument.begins("When it begins").otherwise("now").seldom();
    private static final Argument<Boolean> AGAIN = Argument.option(
                    "again", "Begin another night even though one is under way", "", new Tick())
            .seldom();

    public static final Action BEGIN = Action.having(
                    "begin",
                    List.of("begin"),
                    "Begin a night",
                    "Site, rig and work are carried over from the last one.",
                    (Effect.Beginning) BeginNight::begin)
            .taking(SITE, NAME, FOR)
            .taking(CameraArguments.ALL)
            .taking(ALLOW, PRESSURE, TEMPERATURE, AT, RIG, AGAIN)
            .askingIfMistaken()
            .sentBy("Begin")
            .forExample("", "--site 54.60,-2.90,240 --name Larkfell")
            .forExample("", "--for long guided subs --focal-length 500 --pixel 3.76");

    private BeginNight() {}

    private static NightBeginning begin(Entries entries, BeginningContext context) {
        Last last = Last.NONE;
        if (Files.exists(context.log())) {
            try (NightLog opened = NightLog.open(context.log())) {
                Optional<Submission> sent = context.once().flatMap(opened::submitted);
                if (sent.isPresent()) {
                    return new NightBeginning.AlreadyBegun(
                            sent.get().event(),
                            NightState.of(opened.events(sent.get().night())));
                }
                last = Last.of(opened);
            }
        }
        // Validated before a log is created.
        Entered entered = entered(entries, context, last);
        try (NightLog opened = NightLog.open(context.log())) {
            requireNoneUnderWay(entries, opened, entered.at());
            return begun(opened, entered, context.once());
        }
    }

    /**
     * The validated entries.
     *
     * @param at when the night begins
     */
    private record Entered(NightEvent.Begun begun, BeginningWork work, Instant at, List<EntryNotice> notices) {}

    private static Entered entered(Entries entries, BeginningContext context, Last last) {
        try {
            Instant at = entries.given(AT).orElse(context.now());
            NightEvent.Begun begun = begun(entries, last.begun());
            List<EntryNotice> notices = notices(entries, context, at, last.begun());
            return new Entered(begun, work(entries, begun, last.work()), at, notices);
        } catch (InputRefused refused) {
            throw new EntriesRefused(refused);
        }
    }

    /** The last night of the log: its beginning and its final work. */
    private record Last(Optional<NightEvent.Begun> begun, Optional<Work> work) {
        private static final Last NONE = new Last(Optional.empty(), Optional.empty());

        static Last of(NightLog opened) {
            return opened.latest()
                    .map(night -> {
                        List<LoggedEvent> events = opened.events(night);
                        return new Last(StandingEvents.beginning(events), TonightsWork.last(events));
                    })
                    .orElse(NONE);
        }
    }

    private static NightBeginning begun(NightLog opened, Entered entered, Optional<SubmissionKey> once) {
        EarlierNights earlier = EarlierNights.of(opened);
        NightEvent.Begun begun = experienced(entered.begun(), earlier);
        Optional<Horizon> skyline =
                earlier.skyline(begun.site()).filter(given -> !given.points().isEmpty());
        List<NightEvent> carriedOver = new ArrayList<>();
        entered.work().work().ifPresent(given -> carriedOver.add(new NightEvent.WorkSet(given)));
        skyline.ifPresent(given -> carriedOver.add(new NightEvent.HorizonSet(given)));
        NightState.ModelCache models = new NightState.ModelCache();
        LogEntry.Beginning beginning = LogEntry.begin(opened, begun, carriedOver, entered.at(), models, once);
        List<LoggedEvent> events = opened.events(beginning.night());
        NightState state = NightState.of(events, events.get(events.size() - 1).at(), models);
        return new NightBeginning.Begun(
                events.get(0), begun, state, entered.work(), skyline, beginning.notCopied(), entered.notices());
    }

    private static NightEvent.Begun experienced(NightEvent.Begun begun, EarlierNights earlier) {
        return new NightEvent.Begun(
                begun.siteName(),
                begun.site(),
                begun.weather(),
                earlier.experienced(begun.rig(), begun.site()),
                begun.allowance());
    }

    private static List<EntryNotice> notices(
            Entries entries, BeginningContext context, Instant at, Optional<NightEvent.Begun> last) {
        Optional<DoubtfulSite> odd = entries.given(SITE)
                .flatMap(typed -> DoubtfulSite.of(typed, context.zone(), at, last.map(NightEvent.Begun::site)))
                .filter(doubtful -> !context.isConfirmed());
        if (odd.isPresent() && context.asksIfMistaken()) {
            throw new LooksMistaken(new EntryNotice.OddSite(odd.get(), context.zone()));
        }
        return odd.<EntryNotice>map(site -> new EntryNotice.OddSite(site, context.zone())).stream()
                .toList();
    }

    private static NightEvent.Begun begun(Entries entries, Optional<NightEvent.Begun> last) {
        Site site = entries.given(SITE)
                .or(() -> last.map(NightEvent.Begun::site))
                .orElseThrow(() -> new InputRefused(
                        "no site is known yet",
                        "give {site} as latitude, longitude and height (degrees, north and east positive; metres)"));
        Optional<NightEvent.Begun> same = last.filter(before -> before.site().equals(site));
        String name = entries.given(NAME)
                .orElseGet(() -> same.map(NightEvent.Begun::siteName).orElse("a new site"));
        if (name.isBlank()) {
            throw new InputRefused("the site's name is empty", "give one, such as Larkfell, or leave {name} out");
        }
        Rig rig = entries.given(RIG)
                .map(RigFile::read)
                .orElseGet(() -> last.map(NightEvent.Begun::rig).orElseGet(Rig::typicalForkOnWedge));
        DiscAllowance allowance = entries.given(ALLOW)
                .map(arcmin -> new DiscAllowance(Angle.ofArcminutes(arcmin)))
                .orElse(DiscAllowance.VISUAL);
        return new NightEvent.Begun(name, site, weather(entries, site), rig, allowance);
    }

    private static Weather weather(Entries entries, Site site) {
        Weather standard = Weather.standardAt(site.heightMetres());
        return new Weather(
                entries.given(PRESSURE).orElse(standard.pressureHpa()),
                entries.given(TEMPERATURE).orElse(standard.temperatureC()),
                standard.relativeHumidity());
    }

    private static BeginningWork work(Entries entries, NightEvent.Begun begun, Optional<Work> lastNight) {
        boolean isLimited = entries.given(ALLOW).isPresent();
        Optional<WorkPreset> purpose = entries.given(FOR);
        if (purpose.isPresent()) {
            if (isLimited) {
                throw new InputRefused("{allow} does not depend on the work", "give {allow} or {for}, not both");
            }
            return new BeginningWork(
                    Optional.of(PresetWork.of(purpose.get(), entries, begun, lastNight)), false, Optional.empty());
        }
        if (CameraArguments.areGiven(entries)) {
            throw new InputRefused(
                    "a camera is given, but not the work", "give {for=short subs} or {for=long guided subs} too");
        }
        if (isLimited || lastNight.isEmpty()) {
            return BeginningWork.NONE;
        }
        try {
            TonightsWork.require(begun, lastNight.get());
            return BeginningWork.carriedOver(lastNight.get());
        } catch (ImpossibleWork none) {
            return BeginningWork.notCarriedOver(new NightBeginning.Unsuitable.NoAxis(none.outcome()));
        } catch (InputRefused here) {
            return BeginningWork.notCarriedOver(
                    new NightBeginning.Unsuitable.NotHere(String.valueOf(here.getMessage())));
        }
    }

    /** A second beginning in one evening would abandon this evening's sightings. */
    private static void requireNoneUnderWay(Entries entries, NightLog opened, Instant begins) {
        List<LoggedEvent> last = opened.latest().map(opened::events).orElse(List.of());
        if (entries.isTicked(AGAIN) || last.isEmpty()) {
            return;
        }
        Instant lastAt = last.get(last.size() - 1).at();
        boolean isUnderWay = last.stream().anyMatch(BeginNight::isDone)
                && Duration.between(lastAt, begins).abs().compareTo(UNDER_WAY) < 0;
        if (isUnderWay) {
            throw new EntriesRefused(new InputRefused(
                    "a night is under way, with " + last.size() + " events, the last at " + lastAt,
                    "continue it, or add {again} to begin another. To correct its rig or site: {do:correct-rig},"
                            + " {do:correct-site}"));
        }
    }

    private static boolean isDone(LoggedEvent logged) {
        return !(logged.event() instanceof NightEvent.Begun
                || logged.event() instanceof NightEvent.WorkSet
                || logged.event() instanceof NightEvent.HorizonSet);
    }
}

package polewright.bench.independent;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.Adviser;
import polewright.alignment.advice.RankedSighting;
import polewright.alignment.advice.SightingKind;
import polewright.bench.independent.truth.Directions;
import polewright.bench.independent.truth.Observer;
import polewright.bench.independent.truth.SeenSky;
import polewright.bench.independent.truth.Star;
import polewright.bench.independent.truth.StarInField;
import polewright.bench.independent.truth.Turns;
import polewright.bench.independent.truth.ViewShown;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.Optic;
import polewright.session.MistakenClockOrSite;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/**
 * An observer who follows the advice, by eye, until it says stop.
 *
 * <p>A star that cannot be found is given up after a while and the next best sighting is taken; likewise if an entry
 * is refused. A star that is up for the stated place and time but not for the true ones is replaced by a bright one
 * near where it was said to be, under its own name.
 */
final class Person {
    private static final int MOST_EVENTS = 60;
    private static final int MOST_FAILURES = 30;
    private static final double ABSURD_MOVE_DEG = 20;
    private static final double DARK = Math.toRadians(-6);
    private static final double LOWEST_FOUND_DEG = 10;
    private static final double LOWEST_CHOSEN_DEG = 20;
    private static final double HIGHEST_CHOSEN_DEG = 80;
    private static final double EASY_MAGNITUDE = 2.5;

    private final Scene scene;
    private final Habits habits;
    private final Slip slip;
    private final double toleratedArcmin;
    private final Observer observer;
    private final Notebook notebook;
    private final List<Moment> moments = new ArrayList<>();
    private final List<PlayedNight.Refusal> refusals = new ArrayList<>();
    private final Set<String> givenUp = new HashSet<>();
    private boolean corrected;
    private Optional<String> watchedInstead = Optional.empty();
    private Wedge wedge;
    private Instant now;
    private boolean slipped;
    private long unloggedAfter;
    private int sightings;
    private int compasses;
    private int drifts;
    private int turns;

    private Person(
            Scene scene, Wedge wedge, Told stated, Told truly, Habits habits, Slip slip, double toleratedArcmin) {
        this.scene = scene;
        this.habits = habits;
        this.slip = slip;
        this.toleratedArcmin = toleratedArcmin;
        this.observer = new Observer(scene.air(), habits.scatter(), scene.random());
        this.notebook = new Notebook(stated, truly);
        this.wedge = wedge;
        this.now = scene.from();
        this.slipped = slip.isOfTheWholeNight();
    }

    /**
     * Plays from bare ground to stop, or until 60 events did not suffice or nothing more can be done.
     *
     * @param stated the details of the night as stated, with tonight's mistake
     * @param truly what should have been stated
     */
    static PlayedNight play(
            Scene scene, Wedge wedge, Told stated, Told truly, Habits habits, Slip slip, double toleratedArcmin) {
        return new Person(scene, wedge, stated, truly, habits, slip, toleratedArcmin).played();
    }

    /** The same without a mistake. */
    static PlayedNight play(Scene scene, Wedge wedge, Told truly, Habits habits, double toleratedArcmin) {
        return play(scene, wedge, truly, truly, habits, Slip.NONE, toleratedArcmin);
    }

    private PlayedNight played() {
        addMoment(notebook.write(now, by -> by.begun(toleratedArcmin)));
        boolean isOngoing = true;
        for (SightingKind kind : habits.first()) {
            attempt(kind, Optional.empty(), Duration.ZERO);
        }
        while (isOngoing
                && moments.size() <= MOST_EVENTS
                && givenUp.size() + refusals.size() < MOST_FAILURES
                && !(advice() instanceof Advice.Stop)) {
            correct();
            isOngoing = advice() instanceof Advice.Stop || follow(advice());
        }
        return new PlayedNight(moments, refusals, mistaken(), watchedInstead, toleratedArcmin);
    }

    /** The entries that are wrong in themselves, not through the stated details of the whole night. */
    private Set<Long> mistaken() {
        return slip.mistake().filter(Mistake::isOfTimeOrPlace).isPresent()
                ? Set.of()
                : notebook.corrections().keySet();
    }

    /** Enters the correction, once the mistake has been named. */
    private void correct() {
        if (!habits.correcting() || corrected || !slipped || !isNamed()) {
            return;
        }
        corrected = true;
        now = now.plus(ActionMinutes.CORRECTING);
        Mistake mistake = slip.mistake().orElseThrow();
        List<NightEvent> meant = CorrectionEntered.of(
                mistake,
                notebook.stated(),
                notebook.truly(),
                notebook.corrections(),
                unloggedAfter,
                notebook.written().size());
        // A corrected clock also applies to the entry that corrects it.
        notebook.stateTruth();
        meant.forEach(event -> addMoment(notebook.write(now, event)));
    }

    private boolean isNamed() {
        Stream<String> causes = Stream.concat(
                Accusations.of(night()).causes().stream(),
                refusals.stream()
                        .filter(refusal -> refusal.afterEvents() == moments.size())
                        .map(PlayedNight.Refusal::words));
        return slip.mistake()
                .filter(mistake -> causes.anyMatch(cause -> CauseWords.name(mistake, cause, watchedInstead)))
                .isPresent();
    }

    private NightState night() {
        return moments.get(moments.size() - 1).night();
    }

    private Advice advice() {
        return night().advice();
    }

    private void addMoment(NightState night) {
        moments.add(new Moment(
                notebook.written().get(notebook.written().size() - 1),
                night,
                wedge,
                Duration.between(scene.from(), now).toMillis() / 60000.0,
                notebook.right(),
                slipped));
    }

    /** Whether there was anything to do. */
    private boolean follow(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            return sight(take);
        } else if (advice instanceof Advice.TurnScrews turn) {
            turn(turn);
        } else if (advice instanceof Advice.MoveByHand move) {
            return moveByHand(move);
        } else if (advice instanceof Advice.Clamp) {
            wedge = wedge.clamped(scene.random());
            now = now.plus(ActionMinutes.CLAMPING);
            addMoment(notebook.write(now, by -> new NightEvent.Clamped()));
        } else if (advice instanceof Advice.WaitForDark) {
            return waitForDark();
        } else {
            throw new IllegalStateException("cannot follow " + advice);
        }
        return true;
    }

    /** If the advice in the dark is to wait for darkness, the night ends there, unless the actual mistake is named. */
    private boolean waitForDark() {
        if (isDark()) {
            heedSunWarning("told to wait for dark");
            correct();
            return !(advice() instanceof Advice.WaitForDark);
        }
        now = now.plus(Duration.ofHours(1));
        addMoment(notebook.write(now, by -> new NightEvent.Noted("waited for dark")));
        return true;
    }

    private boolean isDark() {
        return SeenSky.of(scene.place(), now, scene.air()).sunAltitude() < DARK;
    }

    /**
     * If the advice in the dark claims that the Sun is up, something is wrong, and the person reads what it may be.
     */
    private void heedSunWarning(String order) {
        refusals.add(new PlayedNight.Refusal(
                moments.size(),
                order + ", in the dark: "
                        + night().mistakeIfDark()
                                .flatMap(MistakenClockOrSite::words)
                                .orElse("nothing named")));
    }

    /** There is no Sun. */
    private boolean shadow() {
        if (isDark()) {
            heedSunWarning("told to use the Sun");
        }
        return false;
    }

    /** A mount that points roughly toward the pole is not swung half round: another sighting is taken instead. */
    private boolean moveByHand(Advice.MoveByHand move) {
        if (Math.hypot(move.azimuth().degrees(), move.altitude().degrees()) > ABSURD_MOVE_DEG) {
            return nextBest();
        }
        wedge = wedge.moved(move.azimuth().radians(), move.altitude().radians(), scene.random());
        now = now.plus(ActionMinutes.MOVING_BY_HAND);
        addMoment(notebook.write(now, by -> new NightEvent.Knocked()));
        return true;
    }

    private void turn(Advice.TurnScrews advice) {
        if (advice.loosenFirst()) {
            wedge = wedge.clamped(scene.random());
            addMoment(notebook.write(now, by -> new NightEvent.Unclamped()));
        }
        Turns ordered = Entries.ordered(advice.turns());
        turns++;
        Turns made = slip.made(ordered, turns);
        slipped |= !made.equals(ordered);
        wedge = wedge.turned(made, scene.random());
        now = now.plus(ActionMinutes.atTheScrews(ordered.azimuth(), ordered.altitude()));
        givenUp.removeIf(what -> what.startsWith(SightingKind.STILL_POINT.name()));
        addMoment(notebook.write(now, Entries.turned(ordered), Entries.turned(made)));
    }

    /** The advised sighting, or the next best that can be taken; false if there is none. */
    private boolean sight(Advice.TakeSighting advised) {
        sightings++;
        Turns unlogged = slip.unlogged(sightings);
        if (!unlogged.equals(Turns.NONE)) {
            slipped = true;
            unloggedAfter = notebook.written().size();
            wedge = wedge.turned(unlogged, scene.random());
            now = now.plus(ActionMinutes.atTheScrews(unlogged.azimuth(), unlogged.altitude()));
            notebook.recordTruth(now, Entries.turned(unlogged));
        }
        if (!givenUp.contains(key(advised.kind(), advised.star()))) {
            attempt(advised.kind(), advised.star(), advised.watch());
            return true;
        }
        return nextBest();
    }

    private boolean nextBest() {
        Optional<RankedSighting> next = Adviser.ranking(night().situation()).stream()
                .filter(ranked -> !givenUp.contains(key(ranked.kind(), ranked.star())))
                .findFirst();
        next.ifPresent(ranked -> attempt(ranked.kind(), ranked.star(), ranked.watch()));
        return next.isPresent();
    }

    private static String key(SightingKind kind, Optional<AdvisedStar> star) {
        return kind.name() + star.map(s -> " " + s.name()).orElse("");
    }

    private void attempt(SightingKind kind, Optional<AdvisedStar> star, Duration watch) {
        boolean done;
        try {
            done = switch (kind) {
                case COMPASS -> compass();
                case LEVEL_AND_SCALE -> scale();
                case STILL_POINT -> stillPoint();
                case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> drift(star.orElseThrow(), watch);
                case SHADOW -> shadow();
                // There is no camera.
                case FRAMES -> false;
            };
        } catch (InputRefused refused) {
            refusals.add(new PlayedNight.Refusal(moments.size(), String.valueOf(refused.getMessage())));
            done = false;
        }
        if (!done) {
            givenUp.add(key(kind, star));
        }
    }

    private boolean compass() {
        compasses++;
        boolean isOtherEnd = slip.readsTheOtherEnd(compasses);
        slipped |= isOtherEnd;
        double read = observer.compassDeg(wedge, notebook.truly().declinationDeg(now));
        now = now.plus(ActionMinutes.READING);
        addMoment(notebook.write(
                now,
                Entries.compass(notebook.stated(), now, isOtherEnd ? read + 180 : read),
                Entries.compass(notebook.truly(), now, read)));
        return true;
    }

    private boolean scale() {
        double read = observer.scaleDeg(wedge);
        now = now.plus(ActionMinutes.READING);
        addMoment(notebook.write(now, by -> Entries.scale(by, now, read)));
        return true;
    }

    private boolean stillPoint() {
        Star star = Catalogue.poleStar(scene.place());
        double field = notebook.truly()
                .rig()
                .widestOptic()
                .map(Optic::field)
                .orElseThrow()
                .radians();
        now = now.plus(ActionMinutes.STILL_POINT);
        if (!isFound(star, LOWEST_FOUND_DEG) || observer.fromStillPoint(wedge, star, now) > field / 2) {
            return false;
        }
        StarInField seen = observer.stillPoint(wedge, star, now, field, ViewShown.INVERTED);
        addMoment(notebook.write(now, by -> Entries.stillPoint(by, now, star, seen)));
        return true;
    }

    private boolean drift(AdvisedStar advised, Duration watch) {
        Optional<Star> named = Catalogue.find(advised.name())
                .filter(star -> isFound(star, LOWEST_FOUND_DEG))
                .or(() -> nearTo(advised));
        now = now.plus(ActionMinutes.SETTING_A_STAR);
        if (named.isEmpty()) {
            return false;
        }
        drifts++;
        SeenSky sky = SeenSky.of(scene.place(), now, scene.air());
        Star star = named.get();
        Optional<Star> instead = slipped ? Optional.empty() : slip.watchedFor(star, sky, drifts);
        boolean isSwapped = slip.exchangesNorthAndSouth(drifts);
        slipped |= isSwapped || instead.isPresent();
        watchedInstead = watchedInstead.or(() -> instead.map(Star::name));
        Star watched = instead.orElse(star);
        Instant began = now;
        double north = observer.driftDivisions(wedge, watched, began, watch, Entries.DIVISION_RAD, habits.line());
        now = now.plus(watch);
        addMoment(notebook.write(
                now,
                Entries.drift(notebook.stated(), began, watch, star, isSwapped ? -north : north, habits.north()),
                Entries.drift(notebook.truly(), began, watch, watched, north, habits.north())));
        return true;
    }

    private boolean isFound(Star star, double lowestDeg) {
        double altitude = Math.toDegrees(
                Directions.altitude(SeenSky.of(scene.place(), now, scene.air()).direction(star)));
        return altitude > lowestDeg;
    }

    /** A bright star that is truly up, nearest to where the advised one was said to be. */
    private Optional<Star> nearTo(AdvisedStar advised) {
        SeenSky sky = SeenSky.of(scene.place(), now, scene.air());
        double[] there = Directions.of(
                advised.direction().azimuth().radians(),
                advised.direction().altitude().radians());
        return Catalogue.stars().stream()
                .filter(star -> star.magnitude() <= EASY_MAGNITUDE)
                .filter(star -> {
                    double altitude = Math.toDegrees(Directions.altitude(sky.direction(star)));
                    return altitude > LOWEST_CHOSEN_DEG && altitude < HIGHEST_CHOSEN_DEG;
                })
                .min(Comparator.comparingDouble(star -> Directions.angle(sky.direction(star), there)));
    }
}
